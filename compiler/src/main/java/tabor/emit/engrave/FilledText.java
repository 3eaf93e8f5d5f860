package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;

/** Breaks text into lines of a width. Widths and sizes share one unit. */
public final class FilledText {
  private static final String ELLIPSIS = "\u2026";

  /** More characters than most lines hold. */
  private static final int FIRST_LOOK = 128;

  private final TextMetrics font;
  private final Face face;
  private final double size;
  private final double width;

  private FilledText(TextMetrics font, Face face, double size, double width) {
    this.font = font;
    this.face = face;
    this.size = size;
    this.width = width;
  }

  /**
   * The lines of a text. Lines of the source are filled to the width; an empty one starts a
   * paragraph, and stands as an empty line between two. A word wider than a line is cut.
   *
   * @return at least one line
   */
  public static List<String> fill(
      String text, double size, double width, Face face, TextMetrics font) {
    FilledText lines = new FilledText(font, face, size, width);
    List<String> found = new ArrayList<>();
    for (String paragraph : paragraphs(text.strip())) {
      if (!found.isEmpty()) {
        found.add("");
      }
      lines.paragraph(paragraph, found);
    }
    return found;
  }

  /** Nearly all texts are one line, for which no regular expression is set up. */
  private static String[] paragraphs(String text) {
    boolean line = true;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      line &= c >= ' ' && c != '\u0085' && c != '\u2028' && c != '\u2029';
    }
    return line ? new String[] {text} : text.split("\\R\\h*\\R\\s*", -1);
  }

  /** A text on one line; if it is wider than that, its beginning and an ellipsis. */
  public static String clip(String text, double size, double width, Face face, TextMetrics font) {
    FilledText lines = new FilledText(font, face, size, width);
    String shown = font.showable(text).strip();
    if (lines.fits(shown)) {
      return shown;
    }
    int end = longest(shown, at -> lines.fits(clipped(shown, at)));
    return clipped(shown, end);
  }

  private static String clipped(String text, int end) {
    return text.substring(0, end).stripTrailing() + ELLIPSIS;
  }

  private boolean fits(String line) {
    return font.width(line, size, face) <= width;
  }

  private void paragraph(String paragraph, List<String> lines) {
    StringBuilder line = new StringBuilder();
    for (String word : font.showable(paragraph).strip().split(" ", -1)) {
      if (word.isEmpty()) {
        continue;
      }
      String rest = word;
      if (!line.isEmpty() && !fits(line + " " + rest)) {
        lines.add(line.toString());
        line.setLength(0);
      }
      while (line.isEmpty() && rest.length() > 1) {
        int end = fitting(rest);
        if (end == rest.length()) {
          break;
        }
        lines.add(rest.substring(0, end));
        rest = rest.substring(end);
      }
      line.append(line.isEmpty() ? "" : " ").append(rest);
    }
    lines.add(line.toString());
  }

  /** How many characters of a word fit a line: at least one. */
  private int fitting(String word) {
    int fits = longest(word, end -> fits(word.substring(0, end)));
    return Math.max(fits, word.offsetByCodePoints(0, 1));
  }

  /**
   * The longest beginning that passes, in whole characters; what goes on from one that does not
   * pass does not either. Looks at little more than passes: a word may be a thousand lines long.
   */
  private static int longest(String text, IntPredicate passes) {
    int length = text.length();
    int good = 0;
    int bad = whole(text, Math.min(FIRST_LOOK, length));
    while (passes.test(bad)) {
      good = bad;
      if (good == length) {
        return good;
      }
      bad = whole(text, Math.min(2 * good, length));
    }
    int next = text.offsetByCodePoints(good, 1);
    while (next < bad) {
      int half = whole(text, (good + bad) / 2);
      int middle = half < bad ? Math.max(next, half) : next;
      if (passes.test(middle)) {
        good = middle;
        next = text.offsetByCodePoints(good, 1);
      } else {
        bad = middle;
      }
    }
    return good;
  }

  /** An end that cuts no character in two, at most one further on. */
  private static int whole(String text, int end) {
    boolean inside =
        end > 0
            && end < text.length()
            && Character.isSurrogatePair(text.charAt(end - 1), text.charAt(end));
    return inside ? end + 1 : end;
  }
}
