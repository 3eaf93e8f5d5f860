package tabor.groove;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.kit.Kits;
import tabor.kit.Limb;
import tabor.rhythm.Feel;
import tabor.rhythm.Time;
import tabor.testing.RecordEquality;
import tabor.testing.Sketch;

/** Ornaments, levels and dynamics as the notation's page describes them. */
class OrnamentTest {
  private static final Set<Ornament> GRACE = Set.of(Ornament.FLAM, Ornament.DRAG, Ornament.RUFF);
  private static final Set<Ornament> ROLLS =
      Set.of(Ornament.DIDDLE, Ornament.OPEN_ROLL, Ornament.ROLL, Ornament.BUZZ);

  /** The signs of the table of the page. */
  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '"',
      value = {
        "flam, 'x, flam",
        "drag, ''x, drag",
        "ruff, '''x, ruff",
        "diddle, x/, diddle",
        "open-roll, x//, open roll",
        "roll, x///, roll",
        "buzz, x~, buzz",
        "choke, x!, choke",
        "rimshot, x^, rimshot",
      })
  void isWrittenAsThePageSays(String word, String written, String words) {
    Ornament ornament =
        List.of(Ornament.values()).stream()
            .filter(one -> one.word().equals(word))
            .findFirst()
            .orElseThrow();
    assertThat(ornament.before() + "x" + ornament.after()).isEqualTo(written);
    assertThat(ornament.words()).isEqualTo(words);
    assertThat(Ornaments.NONE.with(ornament)).hasToString(word);
  }

  /** One way of coming to the stroke, one way of rolling on it; the rest goes with all. */
  @Test
  void oneTakesThePlaceOfTheOtherOfItsSort() {
    for (Ornament one : Ornament.values()) {
      assertThat(one.isRoll()).as(one.word()).isEqualTo(ROLLS.contains(one));
      for (Ornament other : Ornament.values()) {
        boolean excludes =
            (GRACE.contains(one) && GRACE.contains(other))
                || (ROLLS.contains(one) && ROLLS.contains(other));
        assertThat(one.excludes(other)).as("%s %s", one, other).isEqualTo(excludes);
        Ornaments both = Ornaments.NONE.with(one).with(other);
        assertThat(both.has(one)).isEqualTo(one == other || !excludes);
        assertThat(both.has(other)).isTrue();
      }
    }
    RecordEquality.check(List.of(Ornaments.NONE, Ornaments.NONE.with(Ornament.FLAM)));
  }

  @Test
  void levelsAndDynamicsHaveTheirWords() {
    assertThat(List.of(Level.values()).stream().map(Level::word))
        .containsExactly("ghost", "plain", "accent");
    assertThat(Loudness.of("mf")).contains(Loudness.MF);
    assertThat(Loudness.of("pp")).contains(Loudness.PP);
    assertThat(Loudness.of("fff")).isEmpty();
  }

  /** A tempo ladder stays at each rung for so many times, or for so many whole bars' worth. */
  @ParameterizedTest
  @CsvSource({"1, 8, BARS, 8", "4, 8, BARS, 2", "3, 8, BARS, 2", "8, 4, BARS, 1", "4, 3, TIMES, 3"})
  void aLadderCountsTimesOrBars(int bars, int every, Chart.Every unit, int times) {
    Groove groove = Sketch.groove("g").bars(bars).done();
    Chart.Climb climb =
        new Chart.Climb(
            groove,
            List.of(groove.setting().tempo()),
            Feel.STRAIGHT,
            Time.of(4),
            every,
            unit,
            null,
            Chart.Extras.NONE);
    assertThat(climb.times()).isEqualTo(times);
  }

  /** A kit of four pieces has no second tom; what is written for it goes to the floor tom. */
  @Test
  void aStandInIsSaid() {
    Groove four =
        Sketch.groove("g")
            .kit(Kits.named("four-piece").orElseThrow())
            .stroke(
                Sketch.groove("s").part(Limb.LEFT_HAND, "tom2", "x . . .").done().strokes().get(0))
            .part(Limb.RIGHT_HAND, "ride", "x . . .")
            .done();
    assertThat(StandIns.words(four)).containsExactly("second tom on the floor tom");
    Groove without =
        Sketch.groove("g")
            .kit(Kits.named("four-piece").orElseThrow())
            .part(Limb.RIGHT_HAND, "ride", "x . . .")
            .done();
    assertThat(StandIns.words(without)).isEmpty();
    assertThat(StandIns.words(Sketch.groove("g").part(Limb.LEFT_HAND, "tom2", "x").done()))
        .isEmpty();
  }
}
