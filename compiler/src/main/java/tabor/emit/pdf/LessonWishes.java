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
record LessonWishes(PageWishes lesson) implements SectionWishes {
  @Override
  public LineWishes lines(Groove groove) {
    Integer bars = groove.page().wishes().over(lesson).barsPerLine();
    return bars == null
        ? new LineWishes(0, Set.copyOf(groove.page().lineStarts()))
        : new LineWishes(bars, Set.of());
  }

  @Override
  public boolean startsPage(Section section) {
    return section.page().newPage();
  }

  @Override
  public int columns(Section section) {
    Integer columns = section.page().wishes().columns();
    return columns == null ? 0 : columns;
  }
}
