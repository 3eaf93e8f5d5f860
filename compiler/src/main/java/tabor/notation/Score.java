package tabor.notation;

import java.util.List;
import tabor.groove.Groove;

/**
 * A section as it is written.
 *
 * @param groove what is written; dynamics, hairpins, prose and settings are read there
 * @param bars in order, the pickup first where there is one
 */
public record Score(Groove groove, List<Bar> bars) {
  /** Copies the list. */
  public Score {
    bars = List.copyOf(bars);
  }

  /** The bars that are printed: of a short fill its pickup alone, without the bar behind it. */
  public List<Bar> printed() {
    return groove.isPickupOnly() ? bars.subList(0, 1) : bars;
  }
}
