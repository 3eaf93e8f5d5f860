package tabor.emit.pdf;

import java.util.List;
import tabor.emit.engrave.Mark;

/**
 * A piece of a page that is not torn.
 *
 * @param marks in points from its upper left corner
 * @param height in points
 * @param after room below it, in points; falls away at the foot of a page
 * @param keep true if the next block must stand on the same page
 */
record Block(List<Mark> marks, double height, double after, boolean keep) {
  Block {
    marks = List.copyOf(marks);
  }
}
