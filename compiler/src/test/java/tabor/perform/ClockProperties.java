package tabor.perform;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/** The clock against decimal quotients, for short and long times. */
class ClockProperties {
  @Property
  void picosecondsAreTheRoundedQuotient(
      @ForAll @LongRange(min = 0, max = 10_000_000_000L) long num,
      @ForAll @LongRange(min = 1, max = 10_000_000_000L) long den,
      @ForAll @LongRange(min = 1, max = 10_000) long perMinute,
      @ForAll @LongRange(min = 1, max = 1000) long parts) {
    rounded(Time.of(num, den), new Tempo(Time.of(1, 4), Time.of(perMinute, parts)));
  }

  /** Of ordinary music, which nothing large is needed for. */
  @Property
  void picosecondsOfALessonToo(
      @ForAll @LongRange(min = 0, max = 1_000_000) long num,
      @ForAll @LongRange(min = 1, max = 10_000) long den,
      @ForAll @LongRange(min = 20, max = 300) long perMinute,
      @ForAll @LongRange(min = 1, max = 4) long parts) {
    rounded(Time.of(num, den), new Tempo(Time.of(1, 4), Time.of(perMinute, parts)));
  }

  @Example
  void halfAPicosecondIsRoundedUp() {
    rounded(Time.of(1, 8192), new Tempo(Time.of(1, 4), Time.of(240)));
  }

  private static void rounded(Time length, Tempo tempo) {
    Time whole = tempo.secondsPerWhole();
    BigDecimal top =
        BigDecimal.valueOf(length.num())
            .multiply(BigDecimal.valueOf(whole.num()))
            .scaleByPowerOfTen(12);
    BigDecimal bottom = BigDecimal.valueOf(length.den()).multiply(BigDecimal.valueOf(whole.den()));
    BigDecimal picos =
        top.divide(bottom, 0, RoundingMode.HALF_UP).min(BigDecimal.ONE.scaleByPowerOfTen(18));
    assertThat(BigDecimal.valueOf(Clock.picos(length, tempo))).isEqualByComparingTo(picos);
  }

  @Property
  void timesOfTheClockStandOnAGrid(
      @ForAll @LongRange(min = 1, max = 10_000_000_000_000L) long picos,
      @ForAll @LongRange(min = 1, max = 1000) long perMinute,
      @ForAll @LongRange(min = 1, max = 100) long parts) {
    Tempo tempo = new Tempo(Time.of(1, 4), Time.of(perMinute, parts));
    BigDecimal den = BigDecimal.valueOf(tempo.secondsPerWhole().den());
    BigDecimal num = BigDecimal.valueOf(tempo.secondsPerWhole().num()).scaleByPowerOfTen(12);
    BigDecimal whole = num.divide(den, 0, RoundingMode.DOWN);
    BigDecimal half = BigDecimal.valueOf(500_000_000);
    BigDecimal grid = BigDecimal.valueOf(64);
    while (grid.multiply(half).compareTo(whole) < 0) {
      grid = grid.multiply(BigDecimal.valueOf(2));
    }
    BigDecimal steps =
        BigDecimal.valueOf(picos)
            .multiply(den)
            .multiply(grid)
            .divide(num, 0, RoundingMode.HALF_UP)
            .max(BigDecimal.ONE);
    assertThat(Clock.wholes(picos, tempo))
        .isEqualTo(Time.of(steps.longValueExact(), grid.longValueExact()));
  }
}
