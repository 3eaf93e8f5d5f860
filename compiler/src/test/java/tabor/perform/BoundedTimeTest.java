package tabor.perform;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import tabor.groove.Groove;
import tabor.kit.Limb;
import tabor.rhythm.Feel;
import tabor.rhythm.Time;
import tabor.testing.Sketch;

/** Rounded times against decimal sums, and sections played more than once against one time. */
class BoundedTimeTest {
  private static final BigDecimal GRID = BigDecimal.valueOf(1L << 30);

  private static BigDecimal decimal(Time time) {
    return BigDecimal.valueOf(time.num())
        .divide(BigDecimal.valueOf(time.den()), MathContext.DECIMAL128);
  }

  @Property
  void roundedTimesLieWithinHalfAStepOfTheGrid(
      @ForAll @LongRange(min = -1_000_000_000L, max = 1_000_000_000L) long num,
      @ForAll @LongRange(min = 1, max = 4_000_000_000L) long den) {
    Time time = Time.of(num, den);
    Time rounded = BoundedTime.rounded(time);
    assertThat((1L << 30) % rounded.den()).isZero();
    assertThat(decimal(rounded).subtract(decimal(time)).abs().multiply(GRID))
        .isLessThanOrEqualTo(new BigDecimal("0.5000001"));
  }

  @Test
  void whatIsOnTheGridStaysAndSumsStayInBounds() {
    Time fine = Time.of(3, 1L << 30);
    assertThat(BoundedTime.rounded(fine)).isSameAs(fine);
    assertThat(BoundedTime.plus(Time.of(1, 3), Time.of(1, 5))).isEqualTo(Time.of(8, 15));
    assertThat(BoundedTime.minus(Time.of(1, 3), Time.of(1, 5))).isEqualTo(Time.of(2, 15));
    // Two large primes: their product is beyond 64 bits.
    Time a = Time.of(1, 4_294_967_311L);
    Time b = Time.of(1, 4_294_967_357L);
    assertThat(BoundedTime.plus(a, b)).isEqualTo(Time.ZERO);
    Time third = Time.of(1_431_655_770L, 4_294_967_311L);
    assertThat(decimal(BoundedTime.plus(third, b)).doubleValue())
        .isBetween(1 / 3.0 - 1e-8, 1 / 3.0 + 1e-8);
    assertThat(BoundedTime.isExact(Time.of(1, 1 << 24))).isTrue();
    assertThat(BoundedTime.isExact(Time.of(1, (1 << 24) + 1))).isFalse();
    assertThat(BoundedTime.length(Time.of(1, 7))).isEqualTo(Time.of(1, 7));
    assertThat(BoundedTime.length(Time.ZERO)).isEqualTo(Time.of(1, 1L << 30));
    assertThat(BoundedTime.length(Time.of(-1, 7))).isEqualTo(Time.of(1, 1L << 30));
  }

  /** A share of nine digits is heard where the same share rounded to a microsecond is. */
  @Test
  void aShareTooFineIsHeardWhereItIs() {
    Groove fine =
        Sketch.groove("g")
            .feel(new Feel(Feel.Unit.EIGHTHS, Time.of(618_033_989L, 1_000_000_000L)))
            .part(Limb.RIGHT_HAND, "ride", "xx {xxx}x xx xx")
            .done();
    Groove near =
        Sketch.groove("g")
            .swing(Feel.Unit.EIGHTHS, 618_034, 1_000_000)
            .part(Limb.RIGHT_HAND, "ride", "xx {xxx}x xx xx")
            .done();
    List<Sound> sounds = Performer.once(fine, 0).sounds();
    List<Sound> others = Performer.once(near, 0).sounds();
    assertThat(sounds).hasSameSizeAs(others).hasSize(10);
    for (int i = 0; i < sounds.size(); i++) {
      assertThat(Math.abs(sounds.get(i).micros() - others.get(i).micros())).isLessThanOrEqualTo(2);
    }
  }

  /** Twice through is once through and once more a section later, the pickup left out. */
  @Test
  void twiceIsOnceAndOnceMore() {
    Groove groove =
        Sketch.groove("g")
            .pickup(1)
            .part(Limb.LEFT_HAND, "snare", "x | x . xx .")
            .part(Limb.RIGHT_FOOT, "kick", ". | x . . x")
            .done();
    List<Time> once = Performer.once(groove, 0).sounds().stream().map(Sound::start).toList();
    List<Time> twice = Performer.twice(groove, 0).sounds().stream().map(Sound::start).toList();
    assertThat(once).hasSize(6);
    assertThat(twice).hasSize(11).startsWith(once.toArray(new Time[0]));
    assertThat(twice.subList(6, 11))
        .isEqualTo(once.subList(1, 6).stream().map(time -> time.plus(Time.ONE)).toList());
    Performance counted = Performer.twice(groove, 1);
    assertThat(counted.segments()).hasSize(3);
    assertThat(Performer.twice(groove, 0).segments()).hasSize(2);
    for (int i = 0; i < 3; i++) {
      Segment segment = counted.segments().get(i);
      assertThat(counted.segmentAt(segment.start())).isEqualTo(segment);
      assertThat(counted.segmentAt(segment.start().plus(Time.of(1, 8)))).isEqualTo(segment);
    }
    assertThat(counted.segmentAt(Time.of(100))).isEqualTo(counted.segments().get(2));
  }
}
