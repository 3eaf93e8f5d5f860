package tabor.emit.html;

import java.util.ArrayList;
import java.util.List;
import tabor.emit.engrave.Contour;
import tabor.emit.engrave.Drawing;
import tabor.emit.engrave.Mark;

/**
 * A drawing as a page writes it: its shapes as path data, in the order of drawing, and its words.
 *
 * @param width in user units
 * @param height in user units
 * @param inks its shapes
 * @param words its words
 */
record Outlines(double width, double height, List<Inked> inks, List<Lettered> words) {
  /**
   * A shape.
   *
   * @param strength how strong its colour is, above 0, at most 1
   * @param changed it belongs to what a step changed
   */
  record Inked(LocalPath path, double strength, boolean changed) {}

  /**
   * Words.
   *
   * @param changed they belong to what a step changed
   */
  record Lettered(Mark.Words words, boolean changed) {}

  /** The shapes of a drawing; safe for several threads. */
  static Outlines of(Drawing drawing, SignPaths signs) {
    Finder finder = new Finder(signs);
    finder.all(drawing.marks());
    return new Outlines(
        drawing.width() * LocalPath.UNIT,
        drawing.height() * LocalPath.UNIT,
        finder.inks,
        finder.words);
  }

  /** Signs and lines are shapes here, so that signs can be shared and lines joined into a path. */
  private static final class Finder implements Mark.Cases<Boolean> {
    private final SignPaths signs;
    private final List<Inked> inks = new ArrayList<>();
    private final List<Lettered> words = new ArrayList<>();
    private boolean changed;

    Finder(SignPaths signs) {
      this.signs = signs;
    }

    private boolean all(List<Mark> marks) {
      marks.forEach(mark -> mark.match(this));
      return true;
    }

    @Override
    public Boolean ink(Mark.Ink ink) {
      return inks.add(new Inked(LocalPath.of(ink.outline()), ink.strength(), changed));
    }

    @Override
    public Boolean glyph(Mark.Glyph glyph) {
      return inks.add(new Inked(signs.path(glyph), 1, changed));
    }

    @Override
    public Boolean line(Mark.Line line) {
      return (line.x1() != line.x2() || line.y1() != line.y2())
          && ink(
              new Mark.Ink(
                  Contour.stroke(line.x1(), line.y1(), line.x2(), line.y2(), line.thickness())));
    }

    @Override
    public Boolean words(Mark.Words one) {
      return words.add(new Lettered(one, changed));
    }

    @Override
    public Boolean group(Mark.Group group) {
      boolean before = changed;
      changed |= group.classes().contains("changed");
      all(group.marks());
      changed = before;
      return true;
    }
  }
}
