package tabor.emit.html;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import tabor.rhythm.Time;

/** Numbers of the page, against the JDK's decimals. */
class PageWordingTest {
  private static String expected(Time number, int digits) {
    BigDecimal rounded =
        new BigDecimal(number.num())
            .divide(new BigDecimal(number.den()), new MathContext(60, RoundingMode.HALF_UP))
            .setScale(digits, RoundingMode.HALF_UP);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  @Property
  void ordinaryFractions(
      @ForAll @LongRange(min = -100_000, max = 100_000) long num,
      @ForAll @LongRange(min = 1, max = 5_000) long den,
      @ForAll @IntRange(min = 0, max = 9) int digits) {
    Time number = Time.of(num, den);
    assertThat(PageWording.decimal(number, digits)).isEqualTo(expected(number, digits));
  }

  @Property
  void anyFractions(
      @ForAll long num,
      @ForAll @LongRange(min = 1) long den,
      @ForAll @IntRange(min = 0, max = 9) int digits) {
    Time number = Time.of(num == Long.MIN_VALUE ? 0 : num, den);
    assertThat(PageWording.decimal(number, digits)).isEqualTo(expected(number, digits));
  }

  @Example
  void halvesAreRoundedAwayFromZero() {
    assertThat(PageWording.decimal(Time.of(1, 8), 2)).isEqualTo("0.13");
    assertThat(PageWording.decimal(Time.of(-1, 8), 2)).isEqualTo("-0.13");
    assertThat(PageWording.decimal(Time.of(-1, 1000), 2)).isEqualTo("0");
    assertThat(PageWording.decimal(Time.of(1999, 1000), 2)).isEqualTo("2");
  }
}
