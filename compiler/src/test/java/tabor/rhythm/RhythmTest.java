package tabor.rhythm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigInteger;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Exact time, meters, tempi and note values, against sums done by hand or by big integers. */
class RhythmTest {
  private static final long MOST = 1_000_000;

  @Property
  void fractionsAreAddedAsBigIntegersAre(
      @ForAll @LongRange(min = -MOST, max = MOST) long a,
      @ForAll @LongRange(min = 1, max = MOST) long b,
      @ForAll @LongRange(min = -MOST, max = MOST) long c,
      @ForAll @LongRange(min = 1, max = MOST) long d) {
    Time sum = Time.of(a, b).plus(Time.of(c, d));
    BigInteger top = big(a).multiply(big(d)).add(big(c).multiply(big(b)));
    assertThat(big(sum.num()).multiply(big(b)).multiply(big(d)))
        .isEqualTo(top.multiply(big(sum.den())));
    assertThat(big(sum.num()).gcd(big(sum.den()))).isEqualTo(BigInteger.ONE);
    assertThat(Integer.signum(Time.of(a, b).compareTo(Time.of(c, d))))
        .isEqualTo(big(a).multiply(big(d)).compareTo(big(c).multiply(big(b))));
    assertThat(sum.minus(Time.of(c, d))).isEqualTo(Time.of(a, b));
  }

  @Property
  void timesOfEverySizeStandInOrderAndInLowestTerms(
      @ForAll @LongRange(min = -Long.MAX_VALUE) long a,
      @ForAll @LongRange(min = 1) long b,
      @ForAll @IntRange(min = -Integer.MAX_VALUE) int c,
      @ForAll @IntRange(min = 1) int d) {
    for (Time other : List.of(Time.of(c, d), Time.of(a, d), Time.of(a, b), Time.of(c, b))) {
      for (Time time : List.of(Time.of(a, b), Time.of(c, d))) {
        assertThat(Integer.signum(time.compareTo(other)))
            .isEqualTo(
                big(time.num())
                    .multiply(big(other.den()))
                    .compareTo(big(other.num()).multiply(big(time.den()))));
      }
      assertThat(big(other.num()).gcd(big(other.den()))).isEqualTo(BigInteger.ONE);
    }
    assertThat(big(Time.of(a, b).num()).multiply(big(b)))
        .isEqualTo(big(Time.of(a, b).den()).multiply(big(a)));
  }

  private static BigInteger big(long number) {
    return BigInteger.valueOf(number);
  }

  @ParameterizedTest
  @CsvSource({
    "7, 2, 4, 3, 1/2",
    "-7, 2, -3, -4, 1/2",
    "5, 3, 2, 1, 2/3",
    "-1, 4, 0, -1, 3/4",
    "6, 3, 2, 2, 0"
  })
  void roundsHalvesUpwardsAndFloorsDownwards(
      long num, long den, long rounded, long floor, String fraction) {
    Time time = Time.of(num, den);
    assertThat(time.rounded()).isEqualTo(rounded);
    assertThat(time.floor()).isEqualTo(floor);
    assertThat(time.fraction()).hasToString(fraction);
  }

  @Test
  void timesMultiplyDivideAndTurn() {
    assertThat(Time.of(3, 4).times(Time.of(2, 9))).isEqualTo(Time.of(1, 6));
    assertThat(Time.of(3, 4).over(Time.of(3, 8))).isEqualTo(Time.of(2));
    assertThat(Time.of(-3, 4).inverse()).isEqualTo(Time.of(-4, 3));
    assertThat(Time.of(7, 4).mod(Time.of(3, 4))).isEqualTo(Time.of(1, 4));
    assertThat(Time.of(-1, 4).mod(Time.ONE)).isEqualTo(Time.of(3, 4));
    assertThat(Time.of(1, 3).decimal()).isEqualTo("0.33");
    assertThat(Time.of(125, 2).decimal()).isEqualTo("62.5");
    assertThat(Time.of(120).decimal()).isEqualTo("120");
    assertThatThrownBy(() -> Time.of(1, 0)).isInstanceOf(ArithmeticException.class);
    assertThatThrownBy(Time.ZERO::inverse).isInstanceOf(ArithmeticException.class);
    assertThatThrownBy(() -> Time.of(Long.MAX_VALUE, 3).plus(Time.of(Long.MAX_VALUE, 5)))
        .isInstanceOf(ArithmeticException.class);
  }

  @Property
  void commonDivisorsAreThoseOfBigIntegers(
      @ForAll @IntRange(min = 0) int a, @ForAll @IntRange(min = 1) int b) {
    assertThat(Time.gcd(a, b)).isEqualTo(big(a).gcd(big(b)).longValueExact());
  }

  /** Common practice: compound meters count three units a beat. */
  @ParameterizedTest
  @CsvSource({
    "4, 4, 4, 1/4",
    "3, 4, 3, 1/4",
    "6, 8, 2, 3/8",
    "12, 8, 4, 3/8",
    "9, 16, 3, 3/16",
    "3, 8, 3, 1/8",
    "7, 8, 7, 1/8",
    "2, 2, 2, 1/2",
    "6, 4, 6, 1/4",
    "15, 8, 5, 3/8",
    "18, 8, 18, 1/8"
  })
  void aMeterHasItsUsualBeats(int count, int unit, int beats, String beat) {
    Meter meter = Meter.of(count, unit);
    assertThat(meter.beatCount()).isEqualTo(beats);
    assertThat(meter.beat(0)).hasToString(beat);
    assertThat(meter.beatStart(beats)).isEqualTo(meter.bar());
    assertThat(meter.words()).isEqualTo(count + "/" + unit);
  }

  @Test
  void unequalBeatsAreFoundByTheirPlace() {
    Meter seven = new Meter(7, 8, List.of(Time.of(1, 4), Time.of(1, 4), Time.of(3, 8)));
    assertThat(seven.isEven()).isFalse();
    assertThat(seven.tempoBeat()).isEqualTo(Time.of(1, 8));
    assertThat(seven.words()).isEqualTo("7/8 in 2+2+3");
    assertThat(seven.beatAt(Time.of(3, 8))).isEqualTo(1);
    assertThat(seven.beatAt(Time.of(1, 2))).isEqualTo(2);
    assertThat(seven.beatAt(Time.of(13, 16))).isEqualTo(2);
    assertThatThrownBy(() -> seven.beatAt(Time.of(7, 8)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Meter(7, 8, List.of(Time.ONE)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(new Meter(6, 8, java.util.Collections.nCopies(6, Time.of(1, 8))).words())
        .isEqualTo("6/8 in 6");
  }

  @Test
  void beatsArePlainOrDotted() {
    assertThat(Meter.isPlain(Time.of(1, 4))).isTrue();
    assertThat(Meter.isPlain(Time.ONE)).isTrue();
    assertThat(Meter.isPlain(Time.of(3, 8))).isFalse();
    assertThat(Meter.isPlain(Time.of(1, 12))).isFalse();
    assertThat(Meter.isDotted(Time.of(3, 8))).isTrue();
    assertThat(Meter.isDotted(Time.of(1, 8))).isFalse();
  }

  /** 60 dotted quarters are 90 quarters a minute; a whole note then lasts 60 * 4 / 90 seconds. */
  @Test
  void aTempoCountsItsBeat() {
    Tempo tempo = new Tempo(Time.of(3, 8), Time.of(60));
    assertThat(tempo.quartersPerMinute()).isEqualTo(Time.of(90));
    assertThat(tempo.secondsPerWhole()).isEqualTo(Time.of(8, 3));
    assertThat(tempo.words()).isEqualTo("dotted quarter = 60");
    assertThat(new Tempo(Time.of(1, 2), Time.of(125, 2)).words()).isEqualTo("half = 62.5");
    assertThat(tempo.at(Time.of(80)).beat()).isEqualTo(Time.of(3, 8));
    assertThatThrownBy(() -> new Tempo(Time.of(1, 4), Time.ZERO))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void slotsLeadDownThroughTheirGroups() {
    Slot slot =
        new Slot(new Division(1, 1, 2), 1, List.of(new Slot.Part(1, 3), new Slot.Part(1, 2)));
    // Beat 2, second half, second third of it, second half of that.
    assertThat(slot.start(Meter.COMMON)).isEqualTo(Time.of(3, 8));
    assertThat(slot.length(Meter.COMMON)).isEqualTo(Time.of(1, 8));
    assertThat(slot.placeLength(Meter.COMMON)).isEqualTo(Time.of(1, 48));
    assertThat(slot.place(Meter.COMMON)).isEqualTo(Time.of(3, 8).plus(Time.of(1, 16)));
    Slot spread = new Slot(new Division(2, 2, 3), 2, List.of());
    assertThat(spread.wordLength(Meter.COMMON)).isEqualTo(Time.of(1, 2));
    assertThat(spread.place(Meter.COMMON)).isEqualTo(Time.of(5, 6));
    assertThat(spread.division().isInside(Meter.COMMON)).isTrue();
    assertThat(spread.division().isInside(Meter.of(3, 4))).isFalse();
    assertThatThrownBy(() -> new Slot(new Division(0, 1, 2), 2, List.of()))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Slot.Part(2, 2)).isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @CsvSource({
    "halves, half, 1/2",
    "quarters, quarter, 1/4",
    "eighths, eighth, 1/8",
    "sixteenths, sixteenth, 1/16",
    "thirty-seconds, thirty-second, 1/32",
    "quarter-triplets, quarter-triplet, 1/6",
    "triplets, triplet, 1/12",
    "sixteenth-triplets, sixteenth-triplet, 1/24",
    "quintuplets, quintuplet, 1/20",
    "septuplets, septuplet, 1/28"
  })
  void noteValuesAreNamedSingularAndPlural(String many, String one, String length) {
    NoteValue value = NoteValue.of(many).orElseThrow();
    assertThat(NoteValue.of(one)).contains(value);
    assertThat(value.word()).isEqualTo(many);
    assertThat(value.singular()).isEqualTo(one);
    assertThat(value.length()).hasToString(length);
  }

  @Test
  void feelsAreSaidAsTheyAreWritten() {
    assertThat(Feel.STRAIGHT.words()).isEqualTo("straight");
    assertThat(new Feel(Feel.Unit.EIGHTHS, Time.of(62, 100)).words())
        .isEqualTo("swing eighths 62%");
    assertThat(new Feel(Feel.Unit.SIXTEENTHS, Time.of(2, 3)).words())
        .isEqualTo("swing sixteenths as triplets");
    assertThat(new Feel(Feel.Unit.SIXTEENTHS, Time.of(1, 2)).isStraight()).isTrue();
    assertThatThrownBy(() -> new Feel(Feel.Unit.EIGHTHS, Time.ONE))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /**
   * {@code tempo VALUE = N}: half, quarter, eighth, sixteenth, and half as long again if dotted.
   */
  @ParameterizedTest
  @CsvSource({"half, 2", "quarter, 4", "eighth, 8", "sixteenth, 16"})
  void aTempoCountsPlainAndDottedValues(String word, long part) {
    assertThat(BeatUnit.of(word).orElseThrow().length()).isEqualTo(Time.of(1, part));
    BeatUnit dotted = BeatUnit.of("dotted-" + word).orElseThrow();
    assertThat(dotted.length()).isEqualTo(Time.of(1, part).times(Time.of(3, 2)));
    assertThat(dotted.word()).isEqualTo("dotted-" + word);
    assertThat(BeatUnit.of("whole")).isEmpty();
    assertThat(new Tempo(dotted.length(), Time.of(60)).beatWords()).isEqualTo("dotted " + word);
  }

  @Property
  void commonMultiplesAreTheSmallestThatBothDivide(
      @ForAll @IntRange(min = 1, max = 200) int a, @ForAll @IntRange(min = 1, max = 200) int b) {
    long multiple = Time.lcm(a, b);
    long smallest = a;
    while (smallest % b != 0) {
      smallest += a;
    }
    assertThat(multiple).isEqualTo(smallest);
  }

  @Property
  void theEarlierAndTheLaterOfTwo(
      @ForAll @LongRange(min = -MOST, max = MOST) long a,
      @ForAll @LongRange(min = -MOST, max = MOST) long b) {
    Time one = Time.of(a, 7);
    Time other = Time.of(b, 7);
    assertThat(Time.min(one, other)).isEqualTo(Time.of(Math.min(a, b), 7));
    assertThat(Time.max(one, other)).isEqualTo(Time.of(Math.max(a, b), 7));
    assertThat(Time.of(a, -7)).isEqualTo(Time.of(-a, 7));
  }

  @Test
  void aCountIsABeatAndASyllable() {
    assertThat(Count.of(3, Count.Syllable.AND)).hasToString("3&");
    assertThat(Count.of(3, Count.Syllable.AND))
        .isEqualTo(new Count(3, Count.Syllable.AND, List.of(), 0));
  }
}
