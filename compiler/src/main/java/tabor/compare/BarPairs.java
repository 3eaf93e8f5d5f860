package tabor.compare;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.rhythm.Time;

/** Finds which bar was which, so that a bar put in front changes one bar and not all. */
final class BarPairs {
  /**
   * A bar with nothing in it costs this much to leave alone, a full one half its strokes more: a
   * bar that is put in is one change, but a bar that was worked over is not a new one.
   */
  private static final int EMPTY = 3;

  private BarPairs() {}

  /** Every bar of both sections once, in order; the pickup is none of them. */
  static List<SectionChange.Bars> of(Groove before, Groove after) {
    List<List<Stroke>> left = bars(before);
    List<List<Stroke>> right = bars(after);
    Alignment.Cost cost =
        new Alignment.Cost() {
          private final Map<Long, Integer> known = new HashMap<>();

          @Override
          public int pair(int a, int b) {
            return known.computeIfAbsent(
                ((long) a << 32) | b,
                key ->
                    (before.meter(a + 1).equals(after.meter(b + 1)) ? 0 : 1)
                        + distance(left.get(a), right.get(b)));
          }

          @Override
          public int left(int index) {
            return EMPTY + left.get(index).size() / 2;
          }

          @Override
          public int right(int index) {
            return EMPTY + right.get(index).size() / 2;
          }
        };
    List<SectionChange.Bars> pairs = new ArrayList<>();
    for (Alignment.Pair pair : Alignment.of(left.size(), right.size(), cost)) {
      pairs.add(new SectionChange.Bars(pair.left() + 1, pair.right() + 1));
    }
    return pairs;
  }

  /** Every bar as itself. */
  static List<SectionChange.Bars> inPlace(int bars) {
    List<SectionChange.Bars> pairs = new ArrayList<>();
    for (int bar = 1; bar <= bars; bar++) {
      pairs.add(new SectionChange.Bars(bar, bar));
    }
    return pairs;
  }

  private static List<List<Stroke>> bars(Groove groove) {
    List<List<Stroke>> bars = new ArrayList<>();
    for (int bar = 1; bar <= groove.bars(); bar++) {
      bars.add(new ArrayList<>());
    }
    for (Stroke stroke : groove.written()) {
      if (stroke.bar() > 0) {
        bars.get(stroke.bar() - 1).add(stroke);
      }
    }
    return bars;
  }

  /** How many strokes of either bar the other does not have; one struck otherwise counts once. */
  private static int distance(List<Stroke> left, List<Stroke> right) {
    Map<Time, List<Stroke>> places = new HashMap<>();
    left.forEach(s -> places.computeIfAbsent(s.at(), at -> new ArrayList<>(3)).add(s));
    int distance = 0;
    int met = 0;
    for (Stroke stroke : right) {
      List<Stroke> there = places.getOrDefault(stroke.at(), new ArrayList<>());
      boolean same = there.removeIf(old -> StrokeChange.alike(old, stroke));
      if (same) {
        met++;
      } else if (!there.isEmpty()) {
        there.remove(there.size() - 1);
        met++;
        distance++;
      } else {
        distance++;
      }
    }
    return distance + left.size() - met;
  }
}
