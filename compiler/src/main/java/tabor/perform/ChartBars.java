package tabor.perform;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;

/**
 * The bars that a line of a chart plays, as far as they can be told beforehand.
 *
 * @param isMusic true if time passes in it
 * @param first the section that it begins with; null for none
 * @param round the meters of its bars, once through
 * @param rounds how often; of a line that is played by the clock as often as anybody asks
 */
record ChartBars(boolean isMusic, @Nullable Groove first, List<Meter> round, long rounds) {
  ChartBars {
    round = List.copyOf(round);
  }

  /** How many beats so many bars from the start of these lines have, the last meter going on. */
  static long beats(List<Chart.Item> items, int bars) {
    long beats = 0;
    long left = bars;
    Meter last = Meter.COMMON;
    for (Chart.Item item : items) {
      ChartBars own = of(item);
      for (long i = 0; i < own.rounds() && left > 0 && !own.round().isEmpty(); i++) {
        for (Meter meter : own.round()) {
          if (left > 0) {
            beats += meter.beatCount();
            last = meter;
            left--;
          }
        }
      }
    }
    return beats + left * last.beatCount();
  }

  static ChartBars of(Chart.Item item) {
    if (item instanceof Chart.Play play) {
      List<Meter> round = new ArrayList<>();
      Chart.Amount amount = play.amount();
      play.turns().forEach(turn -> round.addAll(meters(turn.groove(), 0, turn.groove().bars())));
      Groove first = play.turns().isEmpty() ? null : play.turns().get(0).groove();
      if (amount.bars() > 0) {
        List<Meter> cut = new ArrayList<>();
        for (int i = 0; i < amount.bars() && !round.isEmpty(); i++) {
          cut.add(round.get(i % round.size()));
        }
        return new ChartBars(true, first, cut, 1);
      }
      return new ChartBars(
          true, first, round, amount.seconds() == null ? amount.times() : Long.MAX_VALUE);
    }
    if (item instanceof Chart.Climb climb) {
      List<Meter> round = meters(climb.groove(), 0, climb.groove().bars());
      long rounds = climb.seconds() == null ? (long) climb.times() * climb.tempi().size() : 1;
      return new ChartBars(true, climb.groove(), round, rounds);
    }
    if (item instanceof Chart.Trade trade) {
      Groove groove = trade.turn().groove();
      List<Meter> round = new ArrayList<>();
      for (int bar = 0, i = 0; i < groove.bars(); i++) {
        List<Meter> own = meters(groove, bar, trade.bars());
        round.addAll(own);
        round.addAll(own);
        bar = (bar + trade.bars()) % groove.bars();
      }
      long times = trade.amount().seconds() == null ? trade.amount().times() : Long.MAX_VALUE;
      int size = 2 * trade.bars();
      return times < groove.bars()
          ? new ChartBars(true, groove, round.subList(0, (int) times * size), 1)
          : new ChartBars(
              true, groove, round, times == Long.MAX_VALUE ? times : times / groove.bars() + 1);
    }
    if (item instanceof Chart.Rest rest) {
      Groove like = rest.like();
      Meters meters = like == null ? Meters.of(Meter.COMMON) : like.meters();
      List<Meter> round = new ArrayList<>();
      for (int bar = 1; bar <= rest.bars(); bar++) {
        round.add(meters.of(bar));
      }
      return new ChartBars(true, null, round, 1);
    }
    boolean sounds =
        item instanceof Chart.CountIn || item instanceof Chart.Pause || item instanceof Chart.Hold;
    return new ChartBars(sounds, null, List.of(), 0);
  }

  private static List<Meter> meters(Groove groove, int after, int bars) {
    List<Meter> meters = new ArrayList<>();
    for (int i = 0; i < bars; i++) {
      meters.add(groove.meter((after + i) % groove.bars() + 1));
    }
    return meters;
  }
}
