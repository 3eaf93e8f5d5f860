package tabor.perform;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
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
    Time length = Time.of(num, den);
    Tempo tempo = new Tempo(Time.of(1, 4), Time.of(perMinute, parts));
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
}
