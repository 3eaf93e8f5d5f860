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
    List<Inked> inks = new ArrayList<>();
    List<Lettered> all = new ArrayList<>();
    Shapes.each(
        drawing.marks(),
        new Shapes.Taker() {
          @Override
          public void shape(Contour outline, double strength, boolean changed) {
            inks.add(new Inked(LocalPath.of(outline), strength, changed));
          }

          @Override
          public void glyph(Mark.Glyph glyph, boolean changed) {
            inks.add(new Inked(signs.path(glyph), 1, changed));
          }

          @Override
          public void words(Mark.Words words, boolean changed) {
            all.add(new Lettered(words, changed));
          }
        });
    return new Outlines(
        drawing.width() * LocalPath.UNIT, drawing.height() * LocalPath.UNIT, inks, all);
  }
}
