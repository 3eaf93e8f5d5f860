package tabor.merge;

import org.jspecify.annotations.Nullable;
import tabor.format.Printer;
import tabor.syntax.Heading;
import tabor.syntax.Statement;

/**
 * A line of a text, or several where a text in triple quotes runs over them. Its parts one after
 * another are the line.
 *
 * @param lead what stands before the statement
 * @param core the statement as written; empty for a blank line and a comment
 * @param tail blanks and the comment behind it
 * @param end the line end; empty at the end of a text
 * @param statement what it says; null for a blank line and a comment
 * @param meaning the same for two statements that say the same; the text of a comment; empty for a
 *     blank line
 * @param about about whom it says what
 */
record Row(
    String lead,
    String core,
    String tail,
    String end,
    @Nullable Statement statement,
    String meaning,
    About about) {

  /** About whom a statement says what, worked out when it is first asked for: most never are. */
  static final class About {
    /** Of a line that says nothing. */
    static final About NOTHING = new About(null);

    private final @Nullable Statement statement;
    private @Nullable StatementKey key;

    About(@Nullable Statement statement) {
      this.statement = statement;
    }

    @Nullable StatementKey key() {
      if (key == null && statement != null) {
        key = StatementKey.of(statement);
      }
      return key;
    }
  }

  static Row of(String raw, @Nullable Statement statement) {
    int length = raw.length();
    while (length > 0 && (raw.charAt(length - 1) == '\n' || raw.charAt(length - 1) == '\r')) {
      length--;
    }
    String end = raw.substring(length);
    String line = raw.substring(0, length);
    if (statement == null) {
      return new Row("", "", line, end, null, line.strip(), About.NOTHING);
    }
    int from = Math.min(statement.span().start(), line.length());
    int to = Math.min(statement.span().end(), line.length());
    String core = line.substring(from, to);
    boolean unclear = statement instanceof Statement.Broken || statement instanceof Heading.Faulty;
    return new Row(
        line.substring(0, from),
        core,
        line.substring(to),
        end,
        statement,
        unclear ? core.strip() : Printer.print(statement).replace("\r\n", "\n"),
        new About(statement));
  }

  /** About whom it says what; null where it says nothing. */
  @Nullable StatementKey key() {
    return about.key();
  }

  /** The line as written. */
  String raw() {
    return lead + core + tail + end;
  }

  boolean isStatement() {
    return statement != null;
  }

  boolean isBlank() {
    return statement == null && meaning.isEmpty();
  }

  boolean isComment() {
    return statement == null && !meaning.isEmpty();
  }

  boolean isHeading() {
    return statement instanceof Heading;
  }

  /** The comment behind a statement. */
  String comment() {
    return statement == null ? "" : tail.strip();
  }

  /** True if both say the same, comments included, however they are laid out. */
  boolean says(Row other) {
    return isStatement() == other.isStatement()
        && meaning.equals(other.meaning)
        && comment().equals(other.comment());
  }

  Row saying(String otherCore, String otherMeaning) {
    return new Row(lead, otherCore, tail, end, statement, otherMeaning, about);
  }
}
