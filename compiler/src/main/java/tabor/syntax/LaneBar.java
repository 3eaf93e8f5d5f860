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
public record LaneBar(List<Beat> beats, boolean repeat, Span span) {
  /** Copies the list. */
  public LaneBar {
    beats = List.copyOf(beats);
  }
}
