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

  /** How many sections stand beside this one at most, it included; 0 for as many as fit. */
  default int columns(Section section) {
    return 0;
  }

  /** True if a page begins with this section. */
  default boolean startsPage(Section section) {
    return false;
  }
}
