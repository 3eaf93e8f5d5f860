package tabor.cli;

import java.io.PrintStream;
import java.util.List;
import tabor.find.Found;

/**
 * What was found as a table, a line as soon as it is known. The columns are as wide as cells
 * usually are, since those to come are not known yet.
 */
final class FoundTable {
  private static final int SECTION = 16;
  private static final int METER = 12;
  private static final int TEMPO = 20;
  private static final int LIMB = 16;

  private final PrintStream out;
  private final int[] widths;
  private boolean begun;

  /**
   * @param files columns that the longest name of a file takes
   */
  FoundTable(PrintStream out, int files) {
    this.out = out;
    this.widths = new int[] {Math.max("file".length(), files), SECTION, METER, TEMPO, LIMB, 0};
  }

  /** Writes some lines, the heads of the columns before the first of all. */
  void rows(List<Found> found) {
    if (found.isEmpty()) {
      return;
    }
    if (!begun) {
      out.print(FoundText.line(FoundText.HEADS, widths));
      begun = true;
    }
    found.forEach(one -> out.print(FoundText.line(FoundText.row(one, false), widths)));
    out.flush();
  }
}
