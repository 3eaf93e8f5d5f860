package tabor.emit.engrave;

import java.util.List;

/** Spaces a run of bars so that it fills a width. */
record Spacing(List<BarSpacing> bars) {
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
    for (int b = 0; b < bars.size(); b++) {
      double[] places = bars.get(b).place(force);
      starts[b] = x;
      columns[b] = new double[places.length - 1];
      for (int i = 0; i < columns[b].length; i++) {
        columns[b][i] = x + places[i];
      }
      x += places[places.length - 1];
    }
    return new Places(starts, columns, x);
  }

  /** Width of the whole run. */
  double width(double force) {
    double all = 0;
    double width = 0;
    for (int b = 0; b < bars.size(); b++) {
      boolean again = b > 0 && bars.get(b) == bars.get(b - 1);
      width = again ? width : bars.get(b).width(force);
      all += width;
    }
    return all;
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
}
