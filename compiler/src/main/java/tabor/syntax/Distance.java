package tabor.syntax;

import tabor.rhythm.NoteValue;
import tabor.source.Span;

/** The unit of a {@code shift}. */
public sealed interface Distance {
  /** Where it is written. */
  Span span();

  /** A note value. */
  record OfValue(NoteValue value, Span span) implements Distance {}

  /** {@code beats}; over unequal beats the lower number of the meter. */
  record Beats(Span span) implements Distance {}

  /** {@code bars}. */
  record Bars(Span span) implements Distance {}
}
