package tabor.emit.midi;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.rhythm.Time;

/** The division of a file, against a search through all that the format has (15 bits). */
class TicksTest {
  @ParameterizedTest
  @CsvSource({
    "1, 90",
    "1, 10",
    "7, 90",
    "7, 11",
    "960, 90",
    "1000, 90",
    "1001, 90",
    "2401, 13",
    "9001, 600",
    "16384, 10",
    "32767, 90",
  })
  void theSmallestMultipleThatIsFineEnough(int need, int perMinute) {
    int best = 0;
    for (int division = need; division <= 32_767; division += need) {
      best = division;
      if (division >= 960 && 60_000.0 / perMinute / division < 2.5) {
        break;
      }
    }
    Ticks ticks = Ticks.of(BigInteger.valueOf(need), List.of(Time.of(600), Time.of(perMinute)));
    assertThat(ticks.division()).isEqualTo(best);
  }

  @Test
  void whatNoDivisionHoldsIsSaid() {
    assertThat(Ticks.tooFine(BigInteger.valueOf(32_767))).isFalse();
    assertThat(Ticks.tooFine(BigInteger.valueOf(32_768))).isTrue();
    assertThat(Ticks.need(BigInteger.valueOf(6), Time.of(1, 16))).isEqualTo(BigInteger.valueOf(12));
    assertThat(Ticks.need(BigInteger.valueOf(12), Time.of(1, 16)))
        .isEqualTo(BigInteger.valueOf(12));
  }

  /** Halves of a tick go to the later one. */
  @Test
  void placesAreRoundedToTheNearestTick() {
    Ticks ticks = Ticks.of(BigInteger.ONE, List.of(Time.of(90)));
    long quarter = ticks.division();
    assertThat(ticks.at(Time.of(1, 4))).isEqualTo(quarter);
    assertThat(ticks.at(Time.of(9, 4))).isEqualTo(9 * quarter);
    assertThat(ticks.at(Time.of(1, 4 * quarter * 2))).isEqualTo(1);
    assertThat(ticks.at(Time.of(1, 4 * quarter * 3))).isZero();
    assertThat(ticks.at(Time.of(2, 4 * quarter * 3))).isEqualTo(1);
    long fine = 1L << 33;
    assertThat(ticks.at(Time.of(fine - 1, 4 * quarter * 2 * fine))).isZero();
    assertThat(ticks.at(Time.of(fine + 1, 4 * quarter * 2 * fine))).isEqualTo(1);
  }
}
