package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tabor.source.Passage;
import tabor.syntax.SectionKind;

/** A text to passages: its header, then its sections. */
final class Passages {
  /** Most sections of a file; the rest of its text belongs to the last one, and is not read. */
  static final int MOST = 10_000;

  private Passages() {}

  static List<Passage> of(String text) {
    List<Passage> passages = new ArrayList<>();
    LineSplitter lines = new LineSplitter(text);
    int from = 0;
    while (passages.size() < MOST && lines.advance()) {
      if (heading(text, lines.start(), lines.end()).isPresent()) {
        passages.add(new Passage(text.substring(from, lines.start())));
        from = lines.start();
      }
    }
    passages.add(new Passage(text.substring(from)));
    return passages;
  }

  /**
   * The kind of section that a line opens by its first word; empty if it opens none. A word with a
   * capital opens its section too: it is an error of that line alone.
   */
  static Optional<SectionKind> heading(String text, int start, int end) {
    int at = Delimiters.skipBlanks(text, start, end);
    if (at == end || !mayStart(text.charAt(at))) {
      return Optional.empty();
    }
    for (SectionKind kind : SectionKind.values()) {
      int length = kind.word().length();
      int after = at + length;
      if (kind != SectionKind.HEADER
          && after <= end
          && text.regionMatches(true, at, kind.word(), 0, length)) {
        return after == end || !continuesWord(text.charAt(after))
            ? Optional.of(kind)
            : Optional.empty();
      }
    }
    return Optional.empty();
  }

  /** A quick look before the words are compared, since every line passes here. */
  private static boolean mayStart(char c) {
    return "gspkcGSPKC".indexOf(c) >= 0;
  }

  private static boolean continuesWord(char c) {
    return Character.isLetterOrDigit(c) || c == '-' || c == '_' || c == '.' || c == '\'';
  }
}
