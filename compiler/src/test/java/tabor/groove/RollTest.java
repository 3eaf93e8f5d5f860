package tabor.groove;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.kit.Limb;
import tabor.rhythm.Time;
import tabor.testing.Sketch;

/**
 * What a written stroke is played with, worked out by hand from the description of the notation.
 */
class RollTest {
  private static Roll roll(Groove groove, int index) {
    return Roll.of(groove, Snap.of(groove), groove.strokes().get(index)).orElseThrow();
  }

  private static String played(Roll roll) {
    return LongStream.range(0, roll.count())
        .mapToObj(i -> roll.limb(i).letter() + roll.after(i))
        .collect(Collectors.joining(" "));
  }

  private static Groove right(String words) {
    return Sketch.groove("g").part(Limb.RIGHT_HAND, "snare", words).done();
  }

  @ParameterizedTest
  @CsvSource({
    "x/ . . .,    R0 R1/8",
    "x/. . . .,   R0 R1/16",
    "x/- . . .,   R0 R1/16 R1/8 R3/16",
    "x/ - . .,    R0 R1/8 R1/4 R3/8",
    "x// . . .,   R0 R1/16 L1/8 L3/16",
    "x//- . . .,  R0 R1/32 L1/16 L3/32 R1/8 R5/32 L3/16 L7/32",
    "x//.. . . ., R0 R1/48 L1/24 L1/16",
    "{x/x}. . . ., R0 R1/32",
    "x/xx:2 . .,  R0 R1/12",
  })
  void theSlotIsFilledAndHoldsGoOnAtTheSameSpeed(String words, String strokes) {
    assertThat(played(roll(right(words), 0))).isEqualTo(strokes);
  }

  @Test
  void eachLimbRollsForItselfWhereBothDo() {
    Groove groove =
        Sketch.groove("g")
            .part(Limb.RIGHT_HAND, "snare", "x// . . .")
            .part(Limb.LEFT_HAND, "snare", "x// . . .")
            .done();
    assertThat(played(roll(groove, 0))).isEqualTo("R0 R1/16 R1/8 R3/16");
    assertThat(played(roll(groove, 1))).isEqualTo("L0 L1/16 L1/8 L3/16");
  }

  @Test
  void eachLimbRollsForItselfLateInTheSectionToo() {
    Groove groove =
        Sketch.groove("g")
            .part(Limb.RIGHT_HAND, "snare", "xx xx xx xx | xx xx x// x")
            .part(Limb.LEFT_HAND, "tom1", "x x x x | x x x// x")
            .part(Limb.RIGHT_FOOT, "kick", "x x x x | x x x x")
            .done();
    List<Stroke> rolled =
        groove.strokes().stream().filter(s -> s.ornaments().has(Ornament.OPEN_ROLL)).toList();
    assertThat(rolled).hasSize(2);
    for (Stroke stroke : rolled) {
      Roll roll = Roll.of(groove, Snap.of(groove), stroke).orElseThrow();
      assertThat(roll.limb(2)).isEqualTo(stroke.limb());
    }
  }

  @Test
  void theOtherLimbInADiddleOrElsewhereIsNoPartner() {
    Groove groove =
        Sketch.groove("g")
            .part(Limb.RIGHT_HAND, "snare", "x// . . .")
            .part(Limb.LEFT_HAND, "tom1", "x/ x// . .")
            .done();
    assertThat(played(roll(groove, 0))).isEqualTo("R0 R1/16 L1/8 L3/16");
  }

  @Test
  void onlyTheFirstStrokeIsAccented() {
    Roll accented = roll(right("X// . . ."), 0);
    assertThat(List.of(accented.level(0), accented.level(1), accented.level(3)))
        .containsExactly(Level.ACCENT, Level.PLAIN, Level.PLAIN);
    assertThat(roll(right("g// . . ."), 0).level(2)).isEqualTo(Level.GHOST);
  }

  @Test
  void whatIsPressedOrPlainIsNotMeasured() {
    Groove groove = right("x~ x 'x .");
    for (Stroke stroke : groove.strokes()) {
      assertThat(Roll.of(groove, Snap.of(groove), stroke)).isEmpty();
    }
  }

  /** The nearest even number of thirty-seconds, ties downward, at least two, spread evenly. */
  @ParameterizedTest
  @CsvSource({
    "1/4, 8, 1/32",
    "1/1, 32, 1/32",
    "3/8, 12, 1/32",
    "1/12, 2, 1/24",
    "1/6, 6, 1/36",
    "1/8, 4, 1/32",
    "3/32, 2, 3/64",
    "5/32, 4, 5/128",
    "11/64, 6, 11/384",
    "1/64, 2, 1/128",
  })
  void aRollInThirtySecondsIsEvenAndSpreadEvenly(String length, int count, String step) {
    Stroke stroke = right("x . . .").strokes().get(0);
    Time held = time(length);
    Stroke long_ = stroke.moved(1, Time.ZERO, held, stroke.slot());
    Ornament.Way way = Ornament.Way.inValue(Time.of(1, 32));
    Roll roll = Roll.of(long_, way, Time.of(1, 64), true);
    assertThat(roll.count()).isEqualTo(count);
    assertThat(roll.step()).isEqualTo(time(step));
    assertThat(roll.step().times(roll.count())).isEqualTo(held);
    assertThat(roll.limb(1)).isEqualTo(Limb.RIGHT_HAND);
    assertThat(roll.limb(2)).isEqualTo(Limb.LEFT_HAND);
    assertThat(Roll.of(long_, way, held, false).limb(2)).isEqualTo(Limb.RIGHT_HAND);
  }

  private static Time time(String text) {
    String[] parts = text.split("/", -1);
    return Time.of(Long.parseLong(parts[0]), Long.parseLong(parts[1]));
  }

  /** Flam lR, drag llR, ruff lrlR. */
  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '"',
      value = {"'x, L1", "''x, L2 L1", "'''x, L3 R2 L1", "x, \"\""})
  void graceNotesAreByTheOtherLimbAndThoseOfARuffAlternate(String word, String notes) {
    Stroke stroke = right(word + " . . .").strokes().get(0);
    assertThat(
            Grace.of(stroke).stream()
                .map(grace -> grace.limb().letter() + grace.before())
                .collect(Collectors.joining(" ")))
        .isEqualTo(notes);
  }

  @Test
  void graceNotesAreTwentySevenAndAHalfMillisecondsApart() {
    assertThat(Grace.SECONDS.times(10_000)).isEqualTo(Time.of(275));
  }
}
