package tabor.compare;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.rhythm.Time;

/**
 * What the bars of two sections hold, as numbers: equal bars are one, and how far two bars differ
 * is worked out once, however often they are laid over each other.
 */
final class BarContents {
  /**
   * How a stroke is struck: two with the same sound alike.
   *
   * @param length of a roll; zero for any other stroke
   */
  record Way(Limb limb, String surface, Object level, Object ornaments, Time length) {
    static Way of(Stroke s) {
      return new Way(
          s.limb(),
          s.surface().name(),
          s.level(),
          s.ornaments(),
          s.ornaments().isRolled() ? s.length() : Time.ZERO);
    }
  }

  /**
   * A bar.
   *
   * @param number the same for bars that hold the same
   * @param places for each stroke the place and the way, in order of both
   */
  record Bar(int number, long[] places) {
    int strokes() {
      return places.length;
    }
  }

  /** More than there are bars; pairs of them as numbers that spread over a table. */
  private static final int SPREAD = 1 << 20;

  private final Map<Time, Integer> times = new HashMap<>();
  private final Map<Way, Integer> ways = new HashMap<>();
  private final Map<List<Long>, Bar> bars = new HashMap<>();
  private final Map<Long, Integer> distances = new HashMap<>();

  /** The bars of a section from the first; the pickup is none of them. */
  List<Bar> of(Groove groove) {
    List<List<Long>> found = new ArrayList<>();
    for (int bar = 1; bar <= groove.bars(); bar++) {
      found.add(new ArrayList<>());
    }
    for (Stroke stroke : groove.written()) {
      if (stroke.bar() > 0) {
        long time = times.computeIfAbsent(stroke.at(), at -> times.size());
        int way = ways.computeIfAbsent(Way.of(stroke), one -> ways.size());
        found.get(stroke.bar() - 1).add(time << 32 | way);
      }
    }
    return found.stream().map(this::bar).toList();
  }

  private Bar bar(List<Long> strokes) {
    long[] places = strokes.stream().mapToLong(Long::longValue).sorted().toArray();
    return bars.computeIfAbsent(
        Arrays.stream(places).boxed().toList(), same -> new Bar(bars.size(), places));
  }

  /** How many strokes of either bar the other does not have; one struck otherwise counts once. */
  int distance(Bar left, Bar right) {
    if (left == right) {
      return 0;
    }
    return distances.computeIfAbsent(
        (long) left.number * SPREAD + right.number, key -> distance(left.places, right.places));
  }

  private static int distance(long[] left, long[] right) {
    int distance = 0;
    int a = 0;
    int b = 0;
    while (a < left.length || b < right.length) {
      long time = Math.min(time(left, a), time(right, b));
      int same = 0;
      int fromA = a;
      int fromB = b;
      while (time(left, a) == time || time(right, b) == time) {
        long one = time(left, a) == time ? left[a] : Long.MAX_VALUE;
        long other = time(right, b) == time ? right[b] : Long.MAX_VALUE;
        same += one == other ? 1 : 0;
        a += one <= other ? 1 : 0;
        b += other <= one ? 1 : 0;
      }
      distance += Math.max(a - fromA, b - fromB) - same;
    }
    return distance;
  }

  private static long time(long[] places, int index) {
    return index < places.length ? places[index] >> 32 : Long.MAX_VALUE;
  }
}
