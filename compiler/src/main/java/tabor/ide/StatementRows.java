package tabor.ide;

import java.util.Optional;
import tabor.syntax.Beat;
import tabor.syntax.Line;
import tabor.syntax.StatementRow;
import tabor.syntax.StatementTable;

/** The rows of the table of statements for what stands in a file. */
final class StatementRows {
  private StatementRows() {}

  /** The row of a line; empty if it is broken. */
  static Optional<StatementRow> of(Line line) {
    return Optional.empty();
  }

  /** The sign before a stroke with one, two or three grace notes. */
  static StatementRow grace(int notes) {
    return sign("'".repeat(notes) + "x");
  }

  /** The sign behind a stroke. */
  static StatementRow suffix(Beat.Suffix suffix) {
    return sign("x" + suffix.sign());
  }

  /** The sign for the bar before. */
  static StatementRow repeat() {
    return sign("%");
  }

  /** The sign behind a word that spreads over several beats. */
  static StatementRow spread() {
    return sign("x:2");
  }

  private static StatementRow sign(String keyword) {
    return StatementTable.row(StatementTable.SIGN, keyword);
  }
}
