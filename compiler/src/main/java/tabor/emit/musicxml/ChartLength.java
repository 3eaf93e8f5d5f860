package tabor.emit.musicxml;

import tabor.groove.Chart;

/** How many bars a line of a chart is written with at most. */
final class ChartLength implements Chart.Cases<Long> {
  /** A chart of more bars is told in one line instead. */
  private static final long MOST_BARS = 1024;

  private ChartLength() {}

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
  public Long click(Chart.SetClick item) {
    return 0L;
  }

  @Override
  public Long play(Chart.Play item) {
    return 3 * item.turns().stream().mapToLong(turn -> turn.groove().bars() + 1L).sum();
  }

  @Override
  public Long rest(Chart.Rest item) {
    return (long) item.bars();
  }

  @Override
  public Long trade(Chart.Trade item) {
    return 2 * item.turn().groove().bars() + 1L;
  }

  @Override
  public Long pause(Chart.Pause item) {
    return 0L;
  }

  @Override
  public Long ramp(Chart.Ramp item) {
    return 0L;
  }

  @Override
  public Long dynamic(Chart.SetDynamic item) {
    return 0L;
  }

  @Override
  public Long hold(Chart.Hold item) {
    return 0L;
  }

  @Override
  public Long cue(Chart.Cue item) {
    return 0L;
  }

  @Override
  public Long mark(Chart.Mark item) {
    return 0L;
  }

  @Override
  public Long climb(Chart.Climb item) {
    return (item.tempi().size() + 1L) * (item.groove().bars() + 1L);
  }
}
