package tabor.merge;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tabor.parse.Reader;
import tabor.source.Passage;
import tabor.syntax.SectionSyntax;
import tabor.syntax.Statement;

/**
 * The lines of texts that have most of them in common: what one says is worked out and kept once,
 * however often and in however many of the texts it stands.
 */
final class KnownRows {
  private final Reader reader = Reader.ofSeveralTexts();
  private final Map<String, Row> rows = new HashMap<>();

  /** Reads a section of one of the texts. */
  SectionSyntax read(Passage passage) {
    return reader.read(passage);
  }

  /**
   * A line.
   *
   * @param raw as written, with its end
   * @param statement what it says in its section; null for a blank line and a comment
   */
  Row of(String raw, @Nullable Statement statement) {
    Row known = rows.get(raw);
    // The same line may be something else in another kind of section.
    if (known != null && Objects.equals(known.statement(), statement)) {
      return known;
    }
    Row row = Row.of(raw, statement);
    rows.put(raw, row);
    return row;
  }
}
