package tabor.emit.engrave;

import java.util.List;

/**
 * A finished drawing, in staff spaces from its upper left corner, y downwards.
 *
 * @param width of the whole, above 0
 * @param height of the whole, above 0
 * @param title what it is called
 * @param words what it shows, for whoever cannot see it
 * @param marks in the order of drawing
 */
public record Drawing(double width, double height, String title, String words, List<Mark> marks) {
  /** Copies the list; throws {@link IllegalArgumentException} for an empty sheet. */
  public Drawing {
    marks = List.copyOf(marks);
    if (!(width > 0 && height > 0)) {
      throw new IllegalArgumentException("drawing " + width + " by " + height);
    }
  }
}
