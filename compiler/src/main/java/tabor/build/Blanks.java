package tabor.build;

import java.util.IdentityHashMap;
import java.util.Map;
import tabor.emit.engrave.Look;
import tabor.groove.BlankParts;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.PageNotes;
import tabor.groove.Sheet;

/** What a lesson leaves to the student to write: left empty in every picture; it still sounds. */
final class Blanks {
  /** What variations take over from their sheet. */
  private final Map<Groove, PageNotes> sheets = new IdentityHashMap<>();

  /** Those of a lesson. */
  static Blanks of(Lesson lesson) {
    Blanks blanks = new Blanks();
    for (Sheet sheet : lesson.sheets()) {
      PageNotes page = sheet.page();
      if (page.blankSticking() || !page.blankParts().isEmpty()) {
        sheet.grooves().forEach(groove -> blanks.sheets.put(groove, page));
      }
    }
    return blanks;
  }

  /** A section as it is printed. */
  Groove printed(Groove groove) {
    PageNotes sheet = sheets.get(groove);
    Groove asked = sheet == null ? groove : BlankParts.on(sheet, groove);
    return BlankParts.of(asked, asked.page().blankParts());
  }

  /** The look of a section that was {@link #printed}. */
  static Look look(Look look, Groove printed) {
    Look boxes = printed.page().blankSticking() ? look.withBoxes() : look;
    return printed.page().blankBars() > 0 ? boxes.withBlankBars() : boxes;
  }
}
