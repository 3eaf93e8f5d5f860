package tabor.source;

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
}
