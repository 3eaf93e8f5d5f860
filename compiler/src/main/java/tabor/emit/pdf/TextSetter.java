package tabor.emit.pdf;

import java.util.ArrayList;
import java.util.List;
import tabor.emit.engrave.Face;
import tabor.emit.engrave.FilledText;
import tabor.emit.engrave.Mark;
import tabor.emit.engrave.TextMetrics;

/** Sets running text in lines. Sizes and widths in points. */
record TextSetter(TextMetrics font) {
  private static final double LEADING = 1.32;

  /** Room between two paragraphs, as a part of a line. */
  private static final double BETWEEN = 0.45;

  /** One line with its base line at y. */
  Mark.Words line(String text, double x, double y, double size, Mark.Align align) {
    return line(text, x, y, size, align, Face.REGULAR);
  }

  /** One line in a cut of the face. */
  Mark.Words line(String text, double x, double y, double size, Mark.Align align, Face face) {
    String shown = font.showable(text);
    return new Mark.Words(shown, x, y, size, align, font.width(shown, size, face), face);
  }

  double width(String text, double size, Face face) {
    return font.width(font.showable(text), size, face);
  }

  double width(String text, double size) {
    return width(text, size, Face.REGULAR);
  }

  /** A text in lines of a width, as a block. */
  Block text(String text, double size, double width, double after, boolean keep) {
    return text(text, size, width, after, keep, Face.REGULAR);
  }

  /** A text in lines of a width in a cut of the face, as a block. */
  Block text(String text, double size, double width, double after, boolean keep, Face face) {
    List<Mark> marks = new ArrayList<>();
    double leading = size * LEADING;
    double y = size * 0.95;
    for (String line : wrap(text, size, width, face)) {
      if (line.isEmpty()) {
        y += leading * BETWEEN;
      } else {
        marks.add(line(line, 0, y, size, Mark.Align.LEFT, face));
        y += leading;
      }
    }
    return new Block(marks, y - size * 0.95, after, keep);
  }

  /** The lines of a text; an empty one stands between paragraphs. */
  List<String> wrap(String text, double size, double width, Face face) {
    return FilledText.fill(text, size, width, face, font);
  }
}
