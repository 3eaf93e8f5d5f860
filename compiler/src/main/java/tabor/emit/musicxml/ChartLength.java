package tabor.emit.musicxml;

import tabor.groove.Chart;
import tabor.groove.ChartCases;

/** How many bars a line of a chart is written with at most. */
final class ChartLength extends ChartCases<Long> {
  /** A chart of more bars is told in one line instead. */
  private static final long MOST_BARS = 1024;

  private ChartLength() {
    super(0L);
  }

  /** True if a chart is too long to be written out. */
  static boolean isTooLong(Chart chart) {
    long bars = 0;
    for (Chart.Item item : chart.items()) {
      bars += item.match(new ChartLength());
      if (bars > MOST_BARS) {
        return true;
      }
    }
    return false;
  }

  @Override
  public Long countIn(Chart.CountIn item) {
    return (long) item.bars();
  }

  @Override
  public Long play(Chart.Play item) {
    return 3 * item.turns().stream().mapToLong(turn -> turn.groove().bars() + 1L).sum();
  }

  /** The times through that a gradual change goes over are written one by one. */
  @Override
  public Long ramp(Chart.Ramp item) {
    return (long) item.bars();
  }

  @Override
  public Long rest(Chart.Rest item) {
    return (long) item.bars();
  }

  @Override
  public Long trade(Chart.Trade item) {
    return 2L * item.turn().groove().bars() + 1;
  }

  @Override
  public Long climb(Chart.Climb item) {
    return (item.tempi().size() + 1L) * (item.groove().bars() + 1L);
  }
}
