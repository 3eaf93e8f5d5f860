package tabor.emit.pdf;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.emit.engrave.Mark;

/**
 * A piece of a page that is not torn.
 *
 * @param marks in points from its upper left corner
 * @param height in points
 * @param after room below it, in points; falls away at the foot of a page
 * @param keep true if the next block must stand on the same page
 * @param elastic true if the room below it may be stretched and squeezed
 * @param systems how many systems of notes, or rows of such, stand in it: 0 or 1
 * @param bookmarks entries of the outline that lead to its top
 * @param head what is said once more above it where it begins a page: a table's heading row
 */
record Block(
    List<Mark> marks,
    double height,
    double after,
    boolean keep,
    boolean elastic,
    int systems,
    List<String> bookmarks,
    @Nullable Block head) {
  Block {
    marks = List.copyOf(marks);
    bookmarks = List.copyOf(bookmarks);
  }

  /** Words: nothing about them stretches. */
  Block(List<Mark> marks, double height, double after, boolean keep) {
    this(marks, height, after, keep, false, 0, List.of(), null);
  }

  /** Notes, with room below them that may be stretched and squeezed. */
  static Block notes(List<Mark> marks, double height, double after) {
    return new Block(marks, height, after, false, true, 1, List.of(), null);
  }

  /** The same with entries of the outline. */
  Block marked(List<String> titles) {
    return new Block(marks, height, after, keep, elastic, systems, titles, head);
  }

  /** The same, not parted from the next. */
  Block kept() {
    return new Block(marks, height, after, true, elastic, systems, bookmarks, head);
  }

  /** The same with other room below it. */
  Block followedBy(double room) {
    return new Block(marks, height, room, keep, elastic, systems, bookmarks, head);
  }

  /** The same with what is said once more above it where it begins a page. */
  Block under(Block heading) {
    return new Block(marks, height, after, keep, elastic, systems, bookmarks, heading);
  }

  /** How much higher a page gets by beginning with it. */
  double headroom() {
    return head == null ? 0 : head.height() + head.after();
  }
}
