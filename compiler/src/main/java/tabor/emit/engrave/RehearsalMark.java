package tabor.emit.engrave;

import java.util.List;

/** A rehearsal mark: a bold letter or number in a box. */
public final class RehearsalMark {
  /** Room between letter and box, as a part of the size. */
  private static final double ROOM = 0.3;

  private RehearsalMark() {}

  /** Its width with the box. */
  public static double width(String text, double size, TextMetrics font) {
    double width = font.width(font.showable(text), size, Face.BOLD);
    return Math.max(width, size * 0.72) + 2 * size * ROOM;
  }

  /**
   * The mark with its upper left corner at a point.
   *
   * @param text what it says, a letter or a short word
   * @param size type size, in the unit of the place
   */
  public static Mark at(String text, double x, double y, double size, TextMetrics font) {
    String shown = font.showable(text);
    double width = font.width(shown, size, Face.BOLD);
    double room = size * ROOM;
    double line = size * 0.07;
    double right = x + width(text, size, font);
    double bottom = y + size * 0.74 + 2 * room;
    Box box = new Box(x, y, right, bottom);
    Mark.Words words =
        new Mark.Words(
            shown, (x + right) / 2, bottom - room, size, Mark.Align.MIDDLE, width, Face.BOLD);
    return Mark.Group.of(
        "rehearsal-mark", List.of(new Mark.Ink(Contour.rounded(box, size * 0.08, line)), words));
  }
}
