package tabor.resolve;

import java.math.BigInteger;
import org.jspecify.annotations.Nullable;
import tabor.groove.Chart;
import tabor.groove.ChartCases;
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
    return chart.items().stream().mapToLong(item -> item.match(SOUNDS)).sum();
  }

  /** How many strokes an item sounds. */
  static final Chart.Cases<Long> SOUNDS =
      new ChartCases<>(0L) {

        @Override
        public Long play(Chart.Play one) {
          long row = 0;
          for (Chart.Turn turn : one.turns()) {
            row += turn.groove().strokes().size();
          }
          return row * one.times();
        }

        @Override
        public Long climb(Chart.Climb one) {
          return (long) one.groove().strokes().size() * one.times() * one.tempi().size();
        }
      };

  /** In how many bars an item plays sections; 0 where only a time says how long. */
  static final Chart.Cases<Long> BARS =
      new ChartCases<>(0L) {
        @Override
        public Long play(Chart.Play one) {
          Chart.Amount amount = one.amount();
          long row = 0;
          for (Chart.Turn turn : one.turns()) {
            row += turn.groove().bars();
          }
          return amount.bars() > 0
              ? amount.bars() * (one.each() ? (long) one.turns().size() : 1)
              : row * amount.times();
        }

        @Override
        public Long trade(Chart.Trade one) {
          return 2L * one.bars() * one.amount().times();
        }

        @Override
        public Long climb(Chart.Climb one) {
          return one.seconds() == null
              ? (long) one.groove().bars() * one.times() * one.tempi().size()
              : 0;
        }
      };

  /** How long an item lasts, in picoseconds. */
  static final Chart.Cases<BigInteger> LENGTH =
      new ChartCases<>(BigInteger.ZERO) {
        @Override
        public BigInteger countIn(Chart.CountIn one) {
          Time length = meters(one.like()).between(1 - one.bars(), 1);
          return picos(length, one.tempo());
        }

        @Override
        public BigInteger play(Chart.Play one) {
          BigInteger row = BigInteger.ZERO;
          for (Chart.Turn turn : one.turns()) {
            row = row.add(picos(turn.groove().length(), turn.tempo()));
          }
          return row.multiply(BigInteger.valueOf(one.times()));
        }

        @Override
        public BigInteger rest(Chart.Rest one) {
          return picos(meters(one.like()).length(one.bars()), one.tempo());
        }

        @Override
        public BigInteger climb(Chart.Climb one) {
          BigInteger all = BigInteger.ZERO;
          for (Tempo rung : one.tempi()) {
            all = all.add(picos(one.groove().length(), rung));
          }
          return all.multiply(BigInteger.valueOf(one.times()));
        }

        private static Meters meters(@Nullable Groove like) {
          return like == null ? Meters.of(Meter.COMMON) : like.meters();
        }

        private BigInteger picos(Time length, Tempo tempo) {
          Time seconds = length.times(tempo.secondsPerWhole());
          return BigInteger.valueOf(seconds.num())
              .multiply(PICOS)
              .divide(BigInteger.valueOf(seconds.den()));
        }
      };
}
