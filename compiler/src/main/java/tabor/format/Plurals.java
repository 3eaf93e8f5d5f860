package tabor.format;

import tabor.rhythm.NoteValue;
import tabor.syntax.Distance;
import tabor.syntax.Num;

/** Note values, beats and bars, one or several. */
final class Plurals {
  private Plurals() {}

  /** {@code 1 sixteenth}, {@code 2 sixteenths}. */
  static String counted(Num num, Distance unit) {
    if (unit instanceof Distance.OfValue of) {
      NoteValue value = of.value();
      return Printer.number(num) + " " + (num.whole() == 1 ? value.singular() : value.word());
    }
    return counted(num, unit instanceof Distance.Beats ? "beat" : "bar");
  }

  /** {@code 1 bar}, {@code 2 bars}. */
  static String counted(Num num, String singular) {
    return Printer.number(num) + " " + singular + (num.whole() == 1 ? "" : "s");
  }
}
