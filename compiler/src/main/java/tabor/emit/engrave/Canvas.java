package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;

/**
 * Where one system is drawn: marks so far, and how far they reach above and below the staff. y is 0
 * at the staff's top line.
 */
final class Canvas {
  final TextMetrics font;
  final List<Mark> marks = new ArrayList<>();

  /** Reach above the staff, counted upwards from its top line. */
  final Skyline above;

  /** Reach below the staff, counted downwards from its top line. */
  final Skyline below;

  Canvas(TextMetrics font, double width) {
    this.font = font;
    this.above = new Skyline(width, 0.2);
    this.below = new Skyline(width, 4.2);
  }

  /** Notes that something fills a box. */
  Box take(Box box) {
    above.raise(box.left(), box.right(), -box.top());
    below.raise(box.left(), box.right(), box.bottom());
    return box;
  }

  /** A sign with its origin at a point. */
  Mark sign(Sign sign, double x, double y) {
    return sign(sign, x, y, 1);
  }

  /** A sign at a size. */
  Mark sign(Sign sign, double x, double y, double scale) {
    Mark.Glyph glyph = new Mark.Glyph(sign, x, y, scale);
    take(glyph.box());
    return glyph;
  }

  /** A straight line. */
  Mark line(double x1, double y1, double x2, double y2, double thickness, Mark.Cap cap) {
    Mark.Line line = new Mark.Line(x1, y1, x2, y2, thickness, cap);
    take(line.box());
    return line;
  }

  /** A straight line with square ends. */
  Mark rule(double x1, double y1, double x2, double y2, double thickness) {
    return line(x1, y1, x2, y2, thickness, Mark.Cap.BUTT);
  }

  /** A shape. */
  Mark ink(Contour outline) {
    take(outline.bounds());
    return new Mark.Ink(outline);
  }

  /** A sign centred on x whose foot is {@code gap} above all that is there, a stem included. */
  Mark onTop(Sign sign, double x, double stem, double gap) {
    Box box = sign.box();
    double left = x - box.width() / 2;
    double right = Math.max(left + box.width(), stem);
    double bottom = -above.reach(Math.min(left, stem), right) - gap;
    return sign(sign, left - box.left(), bottom - box.bottom());
  }

  /** A sign centred on x whose head is {@code gap} below all that is there, a stem included. */
  Mark underneath(Sign sign, double x, double stem, double gap) {
    Box box = sign.box();
    double left = x - box.width() / 2;
    double right = Math.max(left + box.width(), stem);
    double top = below.reach(Math.min(left, stem), right) + gap;
    return sign(sign, left - box.left(), top - box.top());
  }

  /** A line of text. */
  Mark.Words words(String text, double x, double y, double size, Mark.Align align) {
    return words(text, x, y, size, align, Face.REGULAR);
  }

  /** A line of text in a cut of the face. */
  Mark.Words words(String text, double x, double y, double size, Mark.Align align, Face face) {
    String shown = font.showable(text);
    Mark.Words words =
        new Mark.Words(shown, x, y, size, align, font.width(shown, size, face), face);
    take(words.box());
    return words;
  }
}
