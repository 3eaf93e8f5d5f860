package tabor.emit.pdf;

import java.util.Set;
import tabor.emit.engrave.LineWishes;
import tabor.groove.Groove;
import tabor.groove.PageWishes;
import tabor.groove.Section;

/**
 * What the sections of a lesson say of their page.
 *
 * @param lesson what counts where a section says nothing
 */
record LessonWishes(PageWishes lesson) {
  /** Where the lines of a section should break. */
  LineWishes lines(Groove groove) {
    Integer bars = groove.page().wishes().over(lesson).barsPerLine();
    return bars == null
        ? new LineWishes(0, Set.copyOf(groove.page().lineStarts()))
        : new LineWishes(bars, Set.of());
  }

  /** True if a page begins with this section. */
  boolean startsPage(Section section) {
    return section.page().newPage();
  }

  /** How many sections stand beside this one at most, it included; 0 for as many as fit. */
  int columns(Section section) {
    Integer columns = section.page().wishes().columns();
    return columns == null ? 0 : columns;
  }
}
