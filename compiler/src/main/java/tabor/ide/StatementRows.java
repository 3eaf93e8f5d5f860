package tabor.ide;

import java.util.List;
import java.util.Optional;
import tabor.parse.Reader;
import tabor.syntax.Line;
import tabor.syntax.Statement;
import tabor.syntax.StatementRow;
import tabor.syntax.StatementTable;

/** The rows of the table of statements for what stands in a file. */
final class StatementRows {
  private StatementRows() {}

  /** The row of a line; for a broken one, that of its first word, if only one statement has it. */
  static Optional<StatementRow> of(Line line) {
    if (line.statement() instanceof Statement.Broken broken) {
      List<StatementRow> rows = StatementTable.startingWith(broken.keyword());
      return rows.size() == 1 ? Optional.of(rows.get(0)) : Optional.empty();
    }
    return Reader.row(line.spot().text());
  }

  /** The row of a sign, by an example of it: {@code %}. */
  static StatementRow sign(String keyword) {
    return StatementTable.row(StatementTable.SIGN, keyword);
  }
}
