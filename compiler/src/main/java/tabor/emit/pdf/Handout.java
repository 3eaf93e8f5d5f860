package tabor.emit.pdf;

import java.util.List;
import tabor.emit.engrave.Mark;
import tabor.words.Language;

/**
 * A handout, laid out: what stands where on which page.
 *
 * @param paper its size
 * @param title the document's title
 * @param by the author; empty for none
 * @param language of its fixed words
 * @param sheets the pages
 * @param bookmarks the outline, in order
 */
public record Handout(
    Paper paper,
    String title,
    String by,
    Language language,
    List<Sheet> sheets,
    List<Bookmark> bookmarks) {
  /** Copies the lists. */
  public Handout {
    sheets = List.copyOf(sheets);
    bookmarks = List.copyOf(bookmarks);
  }

  /**
   * One page.
   *
   * @param marks in points from the upper left corner, y downwards
   */
  public record Sheet(List<Mark> marks) {
    /** Copies the list. */
    public Sheet {
      marks = List.copyOf(marks);
    }
  }

  /**
   * An entry of the outline.
   *
   * @param title what it says
   * @param sheet the page, from 0
   * @param y the place on the page, in points from the top
   */
  public record Bookmark(String title, int sheet, double y) {}
}
