package tabor.resolve;

import java.math.BigInteger;
import org.jspecify.annotations.Nullable;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/** How long a chart is, and how much it sounds: outputs grow with both. */
public final class ChartSize {
  /** Most strokes that the charts of a file sound together. */
  public static final long MOST_SOUNDS = 100_000;

  private static final BigInteger PICOS = BigInteger.TEN.pow(12);

  /** Rounded downwards so many times, a chart of exactly a day still is one. */
  static final BigInteger DAY = PICOS.multiply(BigInteger.valueOf(24 * 60 * 60));

  private ChartSize() {}

  /** How many strokes a chart sounds. */
  public static long sounds(Chart chart) {
    return chart.items().stream().mapToLong(ChartSize::sounds).sum();
  }

  /** How many strokes an item sounds. */
  static long sounds(Chart.Item item) {
    if (item instanceof Chart.Play play) {
      long row = 0;
      for (Chart.Turn turn : play.turns()) {
        row += turn.groove().strokes().size();
      }
      return row * play.times();
    }
    return item instanceof Chart.Climb climb
        ? (long) climb.groove().strokes().size() * climb.times() * climb.tempi().size()
        : 0;
  }

  /** In how many bars an item plays sections; 0 where only a time says how long. */
  static long bars(Chart.Item item) {
    if (item instanceof Chart.Play play) {
      Chart.Amount amount = play.amount();
      long row = 0;
      for (Chart.Turn turn : play.turns()) {
        row += turn.groove().bars();
      }
      return amount.bars() > 0
          ? amount.bars() * (play.each() ? (long) play.turns().size() : 1)
          : row * amount.times();
    }
    if (item instanceof Chart.Trade trade) {
      return 2L * trade.bars() * trade.amount().times();
    }
    return item instanceof Chart.Climb climb && climb.seconds() == null
        ? (long) climb.groove().bars() * climb.times() * climb.tempi().size()
        : 0;
  }

  /** How long an item lasts, in picoseconds. */
  static BigInteger length(Chart.Item item) {
    if (item instanceof Chart.CountIn one) {
      return picos(meters(one.like()).between(1 - one.bars(), 1), one.tempo());
    }
    if (item instanceof Chart.Rest one) {
      return picos(meters(one.like()).length(one.bars()), one.tempo());
    }
    BigInteger all = BigInteger.ZERO;
    if (item instanceof Chart.Play play) {
      for (Chart.Turn turn : play.turns()) {
        all = all.add(picos(turn.groove().length(), turn.tempo()));
      }
      return all.multiply(BigInteger.valueOf(play.times()));
    }
    if (item instanceof Chart.Climb climb) {
      for (Tempo rung : climb.tempi()) {
        all = all.add(picos(climb.groove().length(), rung));
      }
      return all.multiply(BigInteger.valueOf(climb.times()));
    }
    return all;
  }

  private static Meters meters(@Nullable Groove like) {
    return like == null ? Meters.of(Meter.COMMON) : like.meters();
  }

  private static BigInteger picos(Time length, Tempo tempo) {
    Time seconds = length.times(tempo.secondsPerWhole());
    return BigInteger.valueOf(seconds.num())
        .multiply(PICOS)
        .divide(BigInteger.valueOf(seconds.den()));
  }
}
