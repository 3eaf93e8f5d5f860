package tabor.build;

import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.PageNotes;
import tabor.groove.PageWishes;
import tabor.groove.Section;
import tabor.groove.Sheet;

/** Sections with other words on their page. */
final class PageOf {
  private PageOf() {}

  /** A section on the page of a student, whose wishes win. */
  static Section player(Section section, PageWishes wishes) {
    if (wishes.equals(PageWishes.NONE)) {
      return section;
    }
    PageNotes old = section.page();
    PageNotes page =
        new PageNotes(
            wishes.over(old.wishes()),
            old.newPage(),
            old.goals(),
            old.teacher(),
            old.blankSticking(),
            old.blankParts(),
            old.blankBars(),
            old.lineStarts());
    if (section instanceof Groove one) {
      return one.on(page);
    }
    if (section instanceof Sheet one) {
      return new Sheet(
          one.name(), one.title(), one.heading(), one.base(), one.variations(), one.prose(), page);
    }
    Chart one = (Chart) section;
    return new Chart(one.name(), one.title(), one.heading(), one.items(), one.prose(), page);
  }
}
