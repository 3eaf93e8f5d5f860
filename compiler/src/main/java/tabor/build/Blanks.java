package tabor.build;

import tabor.emit.engrave.Look;
import tabor.groove.BlankParts;
import tabor.groove.Groove;

/** What a lesson leaves to the student to write: left empty in every picture; it still sounds. */
final class Blanks {
  private Blanks() {}

  /** A section as it is printed. */
  static Groove printed(Groove groove) {
    return BlankParts.of(groove, groove.page().blankParts());
  }

  /** The look of a section that was {@link #printed}. */
  static Look look(Look look, Groove printed) {
    Look boxes = printed.page().blankSticking() ? look.withBoxes() : look;
    return printed.page().blankBars() > 0 ? boxes.withBlankBars() : boxes;
  }
}
