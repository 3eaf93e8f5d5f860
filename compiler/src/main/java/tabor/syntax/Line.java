package tabor.syntax;

import tabor.source.Passage;
import tabor.source.Span;
import tabor.source.Spot;

/**
 * A line with something on it, at its place in a passage. A text in triple quotes makes one line of
 * several.
 *
 * @param passage the passage
 * @param start offset of the line's first character in the passage; the statement's spans count
 *     from there
 * @param statement what it says
 */
public record Line(Passage passage, int start, Statement statement) {
  /** The place of a span of this line's statement. */
  public Spot spot(Span span) {
    return new Spot(passage, span.shift(start));
  }

  /** The place of the whole statement. */
  public Spot spot() {
    return spot(statement.span());
  }

  /** Of the place alone: to go through the statement takes long. */
  @Override
  public int hashCode() {
    return 31 * passage.hashCode() + start;
  }
}
