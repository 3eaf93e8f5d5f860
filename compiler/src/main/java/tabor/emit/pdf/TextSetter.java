package tabor.emit.pdf;

import java.util.ArrayList;
import java.util.List;
import tabor.emit.engrave.Mark;
import tabor.emit.engrave.TextMetrics;

/** Sets running text in lines. Sizes and widths in points. */
final class TextSetter {
  private static final double LEADING = 1.32;

  private final TextMetrics font;

  TextSetter(TextMetrics font) {
    this.font = font;
  }

  /** One line with its base line at y. */
  Mark.Words line(String text, double x, double y, double size, Mark.Align align) {
    String shown = font.showable(text);
    return new Mark.Words(shown, x, y, size, align, font.width(shown, size));
  }

  double width(String text, double size) {
    return font.width(font.showable(text), size);
  }

  /** A text in lines of a width, as a block; its own line breaks are kept. */
  Block text(String text, double size, double width, double after, boolean keep) {
    List<String> lines = wrap(text, size, width);
    List<Mark> marks = new ArrayList<>();
    double leading = size * LEADING;
    double y = size * 0.95;
    for (String line : lines) {
      marks.add(line(line, 0, y, size, Mark.Align.LEFT));
      y += leading;
    }
    return new Block(marks, lines.size() * leading, after, keep);
  }

  /** The lines of a text at a size and width. A word wider than a line is cut. */
  List<String> wrap(String text, double size, double width) {
    List<String> lines = new ArrayList<>();
    for (String paragraph : (Iterable<String>) text.strip().lines()::iterator) {
      StringBuilder line = new StringBuilder();
      for (String word : font.showable(paragraph).strip().split(" +", -1)) {
        String rest = word;
        if (!line.isEmpty() && font.width(line + " " + rest, size) > width) {
          lines.add(line.toString());
          line.setLength(0);
        }
        while (line.isEmpty() && rest.length() > 1 && font.width(rest, size) > width) {
          int fits = fitting(rest, size, width);
          lines.add(rest.substring(0, fits));
          rest = rest.substring(fits);
        }
        line.append(line.isEmpty() ? "" : " ").append(rest);
      }
      lines.add(line.toString());
    }
    return lines;
  }

  /** How many characters of a word fit a line: at least one. */
  private int fitting(String word, double size, double width) {
    int fits = word.offsetByCodePoints(0, 1);
    while (fits < word.length()) {
      int next = word.offsetByCodePoints(fits, 1);
      if (font.width(word.substring(0, next), size) > width) {
        break;
      }
      fits = next;
    }
    return fits;
  }
}
