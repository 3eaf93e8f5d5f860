package tabor.source;

import org.jspecify.annotations.Nullable;

/**
 * A range in a passage.
 *
 * @param passage the passage
 * @param span offsets counted from the passage's first character
 */
public record Spot(Passage passage, Span span) {
  /** The text at the spot. */
  public String text() {
    return span.in(passage.text());
  }

  // Passages are compared as objects, not by what they say.

  @Override
  public boolean equals(@Nullable Object other) {
    return this == other
        || (other instanceof Spot that && passage == that.passage && span.equals(that.span));
  }

  @Override
  public int hashCode() {
    return System.identityHashCode(passage) * 31 + span.hashCode();
  }
}
