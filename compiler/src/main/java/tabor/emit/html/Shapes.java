package tabor.emit.html;

import tabor.emit.engrave.Contour;
import tabor.emit.engrave.Mark;

/**
 * Goes through the marks of a drawing as a page shows them: shapes and words. Signs and lines are
 * shapes here, so that signs can be shared and lines joined into one path.
 */
final class Shapes implements Mark.Cases<Void> {
  /** Takes what is found. */
  interface Taker {
    /**
     * A shape.
     *
     * @param strength above 0, at most 1
     * @param changed it belongs to what a step changed
     */
    void shape(Contour outline, double strength, boolean changed);

    /** A sign. */
    void glyph(Mark.Glyph glyph, boolean changed);

    /** Words. */
    void words(Mark.Words words, boolean changed);
  }

  private final Taker taker;
  private boolean changed;

  private Shapes(Taker taker) {
    this.taker = taker;
  }

  static void each(Iterable<Mark> marks, Taker taker) {
    Shapes shapes = new Shapes(taker);
    marks.forEach(mark -> mark.match(shapes));
  }

  @Override
  public Void ink(Mark.Ink ink) {
    taker.shape(ink.outline(), ink.strength(), changed);
    return null;
  }

  @Override
  public Void glyph(Mark.Glyph glyph) {
    taker.glyph(glyph, changed);
    return null;
  }

  @Override
  public Void line(Mark.Line line) {
    if (line.x1() != line.x2() || line.y1() != line.y2()) {
      taker.shape(
          Contour.stroke(line.x1(), line.y1(), line.x2(), line.y2(), line.thickness()), 1, changed);
    }
    return null;
  }

  @Override
  public Void words(Mark.Words words) {
    taker.words(words, changed);
    return null;
  }

  @Override
  public Void group(Mark.Group group) {
    boolean before = changed;
    changed |= group.classes().contains("changed");
    group.marks().forEach(mark -> mark.match(this));
    changed = before;
    return null;
  }
}
