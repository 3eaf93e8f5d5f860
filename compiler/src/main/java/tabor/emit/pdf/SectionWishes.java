package tabor.emit.pdf;

import tabor.emit.engrave.LineWishes;
import tabor.groove.Groove;
import tabor.groove.Section;

/** What single sections ask of the page. */
public interface SectionWishes {
  /** Nothing. */
  SectionWishes NONE = new SectionWishes() {};

  /** Where the lines of a section should break. */
  default LineWishes lines(Groove groove) {
    return LineWishes.NONE;
  }

  /** True if a page begins with this section. */
  default boolean startsPage(Section section) {
    return false;
  }
}
