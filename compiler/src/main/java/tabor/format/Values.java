package tabor.format;

import tabor.rhythm.NoteValue;
import tabor.syntax.Num;

/** Note values, beats and bars, one or several. */
final class Values {
  private Values() {}

  static String plural(String word) {
    return NoteValue.of(word)
        .map(NoteValue::word)
        .orElseGet(() -> word.endsWith("s") ? word : word + "s");
  }

  /** {@code 1 sixteenth}, {@code 2 sixteenths}. */
  static String counted(Num num, String word) {
    String one =
        NoteValue.of(word)
            .map(NoteValue::singular)
            .orElseGet(() -> word.endsWith("s") ? word.substring(0, word.length() - 1) : word);
    return Printer.number(num) + " " + (num.whole() == 1 ? one : plural(word));
  }
}
