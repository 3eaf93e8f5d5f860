package tabor.syntax;

import java.util.List;
import tabor.source.Span;

/**
 * A bar of a lane.
 *
 * @param beats its words; empty for a repeat
 * @param repeat true for {@code %}
 * @param span where, from the first word to the last
 */
public record Bar(List<Beat> beats, boolean repeat, Span span) {
  /** Copies the list. */
  public Bar {
    beats = List.copyOf(beats);
  }
}
