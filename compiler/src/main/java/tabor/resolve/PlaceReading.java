package tabor.resolve;

import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.groove.Stroke;

/**
 * What a place means in one bar.
 *
 * @param readings the places themselves, in order of time; empty where the bar has none
 * @param chosen which strokes of the bar stand there
 * @param miss why it cannot be said; null if it can
 */
record PlaceReading(List<CountReading> readings, Predicate<Stroke> chosen, @Nullable Miss miss) {
  PlaceReading {
    readings = List.copyOf(readings);
  }

  static PlaceReading of(List<CountReading> readings, Predicate<Stroke> chosen) {
    return new PlaceReading(readings, chosen, null);
  }

  static PlaceReading missing(Miss miss) {
    return new PlaceReading(List.of(), stroke -> false, miss);
  }

  /** True if it cannot be said in any bar before the count is written in another way. */
  boolean isUnclear() {
    return miss instanceof Miss.Ambiguous
        || miss instanceof Miss.Unsaid
        || miss instanceof Miss.UnsaidEvery;
  }
}
