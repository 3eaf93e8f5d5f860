package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import tabor.source.Passage;

/** A text to passages: its header, then its sections. */
final class Passages {
  private static final String[] KEYWORDS = {"pattern", "kit", "groove", "step", "chart"};

  private Passages() {}

  static List<Passage> of(String text) {
    List<Passage> passages = new ArrayList<>();
    LineSplitter lines = new LineSplitter(text);
    int from = 0;
    while (lines.advance()) {
      if (heading(text, lines.start(), lines.end())) {
        passages.add(new Passage(text.substring(from, lines.start())));
        from = lines.start();
      }
    }
    passages.add(new Passage(text.substring(from)));
    return passages;
  }

  /** True if the first word of a line opens a section. */
  static boolean heading(String text, int start, int end) {
    int at = Lines.skipBlanks(text, start, end);
    if (at + 3 > end || !mayStart(text.charAt(at))) {
      return false;
    }
    for (String keyword : KEYWORDS) {
      int after = at + keyword.length();
      if (after <= end && text.startsWith(keyword, at)) {
        return after == end || !continuesWord(text.charAt(after));
      }
    }
    return false;
  }

  private static boolean mayStart(char c) {
    return c == 'g' || c == 's' || c == 'p' || c == 'k' || c == 'c';
  }

  private static boolean continuesWord(char c) {
    return Character.isLetterOrDigit(c) || c == '-' || c == '_' || c == '.' || c == '\'';
  }
}
