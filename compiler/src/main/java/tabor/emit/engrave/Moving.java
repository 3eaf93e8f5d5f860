package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;

/** The same marks elsewhere, at another size. */
public final class Moving implements Mark.Cases<Mark> {
  private final double dx;
  private final double dy;
  private final double scale;

  private Moving(double dx, double dy, double scale) {
    this.dx = dx;
    this.dy = dy;
    this.scale = scale;
  }

  /** The marks lower by {@code dy}. */
  public static List<Mark> down(List<Mark> marks, double dy) {
    return by(marks, 0, dy, 1);
  }

  /** The marks scaled from the origin, then moved. */
  public static List<Mark> by(List<Mark> marks, double dx, double dy, double scale) {
    if (dx == 0 && dy == 0 && scale == 1) {
      return marks;
    }
    return new Moving(dx, dy, scale).all(marks);
  }

  private List<Mark> all(List<Mark> marks) {
    List<Mark> moved = new ArrayList<>(marks.size());
    for (Mark mark : marks) {
      moved.add(mark.match(this));
    }
    return moved;
  }

  @Override
  public Mark ink(Mark.Ink ink) {
    return new Mark.Ink(ink.outline().placed(dx, dy, scale, scale), ink.strength());
  }

  @Override
  public Mark glyph(Mark.Glyph glyph) {
    return new Mark.Glyph(
        glyph.sign(), dx + glyph.x() * scale, dy + glyph.y() * scale, glyph.scale() * scale);
  }

  @Override
  public Mark line(Mark.Line line) {
    return new Mark.Line(
        dx + line.x1() * scale,
        dy + line.y1() * scale,
        dx + line.x2() * scale,
        dy + line.y2() * scale,
        line.thickness() * scale,
        line.cap());
  }

  @Override
  public Mark words(Mark.Words w) {
    return new Mark.Words(
        w.text(),
        dx + w.x() * scale,
        dy + w.y() * scale,
        w.size() * scale,
        w.align(),
        w.width() * scale,
        w.face());
  }

  @Override
  public Mark group(Mark.Group group) {
    return new Mark.Group(group.classes(), group.data(), all(group.marks()));
  }
}
