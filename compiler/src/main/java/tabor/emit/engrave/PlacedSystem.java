package tabor.emit.engrave;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tabor.lists.Lists;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/**
 * The bars of one system in their places.
 *
 * @param bars measured
 * @param places where their columns stand
 * @param columns for each bar which column stands at which time
 * @param courtesy meters after its last barline: those of the next system, none where they stay
 */
record PlacedSystem(
    List<BarPlan> bars,
    Spacing.Places places,
    List<TreeMap<Time, Integer>> columns,
    List<Meter> courtesy) {
  static PlacedSystem of(List<BarPlan> bars, Spacing.Places places, List<Meter> courtesy) {
    List<TreeMap<Time, Integer>> columns =
        Lists.map(
            bars,
            bar -> {
              TreeMap<Time, Integer> map = new TreeMap<>();
              for (int i = 0; i < bar.slices().size(); i++) {
                map.put(bar.slices().get(i).at(), i);
              }
              return map;
            });
    return new PlacedSystem(bars, places, columns, courtesy);
  }

  /** Where the staff lines end. */
  double right() {
    return places.end() + StaffPainter.courtesy(courtesy);
  }

  /** Where what stands in a bar begins, after its barline and the signs that follow it. */
  double start(int bar) {
    return places.starts()[bar] + bars.get(bar).room();
  }

  /** Where the column of a time stands; between two columns in proportion. */
  double x(int bar, Time at) {
    BarPlan plan = bars.get(bar);
    double[] xs = places.columns()[bar];
    double end = places.endOf(bar) - 0.6;
    Map.Entry<Time, Integer> before = columns.get(bar).floorEntry(at);
    Map.Entry<Time, Integer> after = columns.get(bar).higherEntry(at);
    if (before != null && before.getKey().equals(at)) {
      return xs[before.getValue()];
    }
    Time fromTime = before == null ? plan.bar().start() : before.getKey();
    double from = before == null ? start(bar) + 1.0 : xs[before.getValue()];
    Time toTime = after == null ? plan.end() : after.getKey();
    double to = after == null ? end : xs[after.getValue()];
    return from + (to - from) * Durations.share(fromTime, at, toTime);
  }

  /** The index of the bar with this number, or -1. */
  int indexOf(int number) {
    int index = number - bars.get(0).bar().number();
    return index >= 0 && index < bars.size() ? index : -1;
  }
}
