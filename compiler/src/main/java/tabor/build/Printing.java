package tabor.build;

import java.util.IdentityHashMap;
import java.util.Map;
import tabor.emit.engrave.Look;
import tabor.groove.BlankParts;
import tabor.groove.ChartSigns;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.PageNotes;
import tabor.groove.Sheet;

/**
 * How the sections of a lesson are drawn: what is left to the student to write stays empty, though it
 * sounds, and what its charts say stands at the notes.
 */
final class Printing {
  /** What variations take over from their sheet. */
  private final Map<Groove, PageNotes> sheets = new IdentityHashMap<>();

  private final Map<String, ChartSigns> signs;

  private Printing(Map<String, ChartSigns> signs) {
    this.signs = signs;
  }

  /** Every section by itself, whole. */
  static Printing plain() {
    return new Printing(Map.of());
  }

  /** The sections of a lesson. */
  static Printing of(Lesson lesson) {
    Printing printing = new Printing(ChartSigns.of(lesson));
    for (Sheet sheet : lesson.sheets()) {
      PageNotes page = sheet.page();
      if (page.blankSticking() || !page.blankParts().isEmpty()) {
        sheet.grooves().forEach(groove -> printing.sheets.put(groove, page));
      }
    }
    return printing;
  }

  /** A section as it is printed. */
  Groove printed(Groove groove) {
    PageNotes sheet = sheets.get(groove);
    Groove asked = sheet == null ? groove : BlankParts.on(sheet, groove);
    return BlankParts.of(asked, asked.page().blankParts());
  }

  /** The look of a section that was {@link #printed}. */
  Look look(Look look, Groove printed) {
    Look signed = look.withSigns(signs.getOrDefault(printed.name(), ChartSigns.NONE));
    Look boxes = printed.page().blankSticking() ? signed.withBoxes() : signed;
    return printed.page().blankBars() > 0 ? boxes.withBlankBars() : boxes;
  }
}
