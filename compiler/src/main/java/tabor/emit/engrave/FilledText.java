package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;

/** Breaks text into lines of a width. Widths and sizes share one unit. */
public final class FilledText {
  private static final String ELLIPSIS = "\u2026";

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
    int end = shown.length();
    while (end > 0 && !lines.fits(shown.substring(0, end).stripTrailing() + ELLIPSIS)) {
      end = shown.offsetByCodePoints(end, -1);
    }
    return shown.substring(0, end).stripTrailing() + ELLIPSIS;
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
      while (line.isEmpty() && rest.length() > 1 && !fits(rest)) {
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
    int fits = word.offsetByCodePoints(0, 1);
    while (fits < word.length()) {
      int next = word.offsetByCodePoints(fits, 1);
      if (!fits(word.substring(0, next))) {
        break;
      }
      fits = next;
    }
    return fits;
  }
}
