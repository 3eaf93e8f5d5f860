package tabor.emit.engrave;

import java.util.List;

/**
 * Spaces the columns of a run of bars. Each column wants room that grows with its length, but less
 * than in proportion (a power of 0.54: twice the length takes about 1.45 times the room), and never
 * gets less than its signs and texts need.
 */
final class Spacing {
  /** Room of a quarter note at natural spacing. */
  private static final double QUARTER = 5.3;

  private static final double POWER = 0.54;

  /** Room of a bar that is silent or repeats the one before. */
  private static final double EMPTY = 7.5;

  private static final double EMPTY_LEAST = 4.6;
  private static final double AFTER_BARLINE = 1.0;

  private final List<BarPlan> bars;
  private final double gap;
  private final double textGap;

  /**
   * How close signs may come.
   *
   * @param bars what is spaced
   * @param tight true for as close as can still be read
   */
  Spacing(List<BarPlan> bars, boolean tight) {
    this.bars = bars;
    this.gap = tight ? 0.14 : 0.32;
    this.textGap = tight ? 0.2 : 0.45;
  }

  /**
   * Columns in their places.
   *
   * @param starts where each bar's line before it stands
   * @param columns for each bar where its columns stand
   * @param end where the last barline stands
   */
  record Places(double[] starts, double[][] columns, double end) {
    double endOf(int bar) {
      return bar + 1 < starts.length ? starts[bar + 1] : end;
    }
  }

  /** Places the columns from {@code start} on with natural distances times {@code force}. */
  Places place(double start, double force) {
    double[] starts = new double[bars.size()];
    double[][] columns = new double[bars.size()][];
    double x = start;
    double count = Double.NEGATIVE_INFINITY;
    double sticking = Double.NEGATIVE_INFINITY;
    for (int b = 0; b < bars.size(); b++) {
      BarPlan plan = bars.get(b);
      List<Slice> slices = plan.slices();
      starts[b] = x;
      columns[b] = new double[slices.size()];
      if (slices.isEmpty()) {
        x += Math.max(EMPTY_LEAST, EMPTY * force);
        continue;
      }
      Slice first = slices.get(0);
      double at = x + AFTER_BARLINE - first.left();
      double late = Durations.of(first.at().minus(plan.bar().start()));
      if (late > 0) {
        at += force * natural(late);
      }
      for (int i = 0; i < slices.size(); i++) {
        Slice slice = slices.get(i);
        double middle = Rule.HEAD / 2;
        if (slice.countWidth() > 0) {
          at = Math.max(at, count + textGap + slice.countWidth() / 2 - middle);
          count = at + middle + slice.countWidth() / 2;
        }
        if (slice.stickingWidth() > 0) {
          at = Math.max(at, sticking + textGap + slice.stickingWidth() / 2 - middle);
          sticking = at + middle + slice.stickingWidth() / 2;
        }
        columns[b][i] = at;
        double wish = force * natural(Durations.of(slice.length()));
        boolean last = i + 1 == slices.size();
        double next = last ? 0.6 + gap : gap - slices.get(i + 1).left();
        at += Math.max(slice.right() + next, wish);
      }
      x = at;
    }
    return new Places(starts, columns, x);
  }

  /** Width of the whole run. */
  double width(double force) {
    return place(0, force).end();
  }

  /** The force at which the run is as wide as {@code target}; 0 if it is wider at any. */
  double forceFor(double target, double most) {
    if (width(0) >= target) {
      return 0;
    }
    if (width(most) <= target) {
      return most;
    }
    double low = 0;
    double high = most;
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      if (width(middle) > target) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return low;
  }

  private static double natural(double wholes) {
    return QUARTER * StrictMath.pow(4 * wholes, POWER);
  }
}
