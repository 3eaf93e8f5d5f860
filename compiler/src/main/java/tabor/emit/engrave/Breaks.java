package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;

/**
 * Breaks a section into systems at barlines so that all are filled as evenly as can be: the sum of
 * the squared logarithms of stretch is least, where crowding counts more than stretching and a
 * system would rather not begin in the middle of a pair of bars.
 */
final class Breaks {
  /** More bars than this are never put in one system. */
  private static final int MOST = 24;

  /** Crowding a system is so much worse than stretching it. */
  private static final double CROWDING = 2.5;

  /** The cost of a system that begins between the two bars of a pair: phrases come in pairs. */
  private static final double TORN_PAIR = 0.35;

  private Breaks() {}

  /**
   * The first bar of each system.
   *
   * @param bars measured
   * @param first room for bars in the first system
   * @param later room for bars in each later one
   */
  static List<Integer> of(List<BarPlan> bars, double first, double later) {
    int count = bars.size();
    double[] natural = new double[count];
    double[] least = new double[count];
    for (int i = 0; i < count; i++) {
      Spacing alone = new Spacing(List.of(bars.get(i)), false);
      natural[i] = alone.width(1);
      least[i] = alone.width(0);
    }
    boolean inPairs = bars.get(count - 1).bar().number() % 2 == 0;
    double[] best = new double[count + 1];
    int[] from = new int[count + 1];
    for (int end = 1; end <= count; end++) {
      best[end] = Double.POSITIVE_INFINITY;
      double wide = 0;
      double narrow = 0;
      for (int start = end - 1; start >= 0 && end - start <= MOST; start--) {
        wide += natural[start];
        narrow += least[start];
        double room = start == 0 ? first : later;
        if (narrow > room && end - start > 1) {
          break;
        }
        double stretch = StrictMath.log(room / wide);
        // One short line alone need not be filled.
        boolean alone = start == 0 && end == count;
        double cost = alone && stretch > 0 ? 0 : stretch * stretch * (stretch < 0 ? CROWDING : 1);
        if (inPairs && Math.floorMod(bars.get(start).bar().number() - 1, 2) == 1) {
          cost += TORN_PAIR;
        }
        if (best[start] + cost < best[end]) {
          best[end] = best[start] + cost;
          from[end] = start;
        }
      }
    }
    List<Integer> starts = new ArrayList<>();
    for (int end = count; end > 0; end = from[end]) {
      starts.add(0, from[end]);
    }
    return starts;
  }
}
