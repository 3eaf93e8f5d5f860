package tabor.emit.musicxml;

import tabor.groove.Chart;

/** How many bars a line of a chart is written with at most. */
final class ChartLength {
  /** A chart of more bars is told in one line instead. */
  private static final long MOST_BARS = 1024;

  private ChartLength() {}

  /** True if a chart is too long to be written out. */
  static boolean isTooLong(Chart chart) {
    long bars = 0;
    for (Chart.Item item : chart.items()) {
      bars += most(item);
      if (bars > MOST_BARS) {
        return true;
      }
    }
    return false;
  }

  private static long most(Chart.Item item) {
    if (item instanceof Chart.CountIn count) {
      return count.bars();
    }
    if (item instanceof Chart.Play play) {
      return 3 * play.turns().stream().mapToLong(turn -> turn.groove().bars() + 1L).sum();
    }
    if (item instanceof Chart.Ramp ramp) {
      // The times through that a gradual change goes over are written one by one.
      return ramp.bars();
    }
    if (item instanceof Chart.Rest rest) {
      return rest.bars();
    }
    if (item instanceof Chart.Trade trade) {
      return 2L * trade.turn().groove().bars() + 1;
    }
    return item instanceof Chart.Climb climb
        ? (climb.tempi().size() + 1L) * (climb.groove().bars() + 1L)
        : 0;
  }
}
