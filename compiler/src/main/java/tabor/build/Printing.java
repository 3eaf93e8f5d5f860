package tabor.build;

import java.util.Map;
import tabor.emit.engrave.Look;
import tabor.groove.BlankParts;
import tabor.groove.ChartSigns;
import tabor.groove.Groove;
import tabor.groove.Lesson;

/**
 * How the sections of a lesson are drawn: what is left to the student to write stays empty, though
 * it sounds, and what its charts say stands at the notes.
 */
record Printing(Map<String, ChartSigns> signs) {
  /** Every section by itself, whole. */
  static Printing plain() {
    return new Printing(Map.of());
  }

  /** The sections of a lesson. */
  static Printing of(Lesson lesson) {
    return new Printing(ChartSigns.of(lesson));
  }

  /** A section as it is printed. */
  Groove printed(Groove groove) {
    return BlankParts.of(groove, groove.page().blankParts());
  }

  /** The look of a section that was {@link #printed}. */
  Look look(Look look, Groove printed) {
    Look signed = look.withSigns(signs.getOrDefault(printed.name(), ChartSigns.NONE));
    Look boxes = printed.page().blankSticking() ? signed.withBoxes() : signed;
    return printed.page().blankBars() > 0 ? boxes.withBlankBars() : boxes;
  }
}
