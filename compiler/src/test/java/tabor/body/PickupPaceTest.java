package tabor.body;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Groove;
import tabor.kit.Limb;
import tabor.resolve.Options;
import tabor.rhythm.Time;

/**
 * How fast a section with a pickup or with grace notes can go, worked out by hand: of a hand at
 * most 10 strokes a second in a row (three make two gaps) and 22 within a double; a quarter at
 * tempo T lasts 60/T seconds. The pickup is played once and leads in; what goes round is the rest.
 */
class PickupPaceTest {
  private static Fastest.Bound extreme(String lines) {
    Groove groove =
        new Compiler(Loader.NONE)
            .compile(
                Path.of("a.tabor"), "groove g\n " + lines.replace("; ", "\n ") + "\n", Options.NONE)
            .lesson()
            .grooves()
            .get(0);
    Fastest.Bound bound = Fastest.of(groove).extreme();
    assertThat(bound).as(lines).isNotNull();
    return bound;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // Three sixteenths in a row: 4T/60 are 10.
        "pickup 1 beat; snare : rrrr & . . . .| 150| STROKES",
        "pickup 1 beat; snare : .rrr & . . . .| 150| STROKES",
        "pickup 1 beat; snare : ..rr & r . . .| 150| STROKES",
        "pickup 1 beat; snare : ...r & rr.. . . .| 150| STROKES",
        // Two: 4T/60 are 22.
        "pickup 1 beat; snare : ..rr & . . . .| 330| DOUBLE",
        "pickup 1 beat; snare : ...r & r . . .| 330| DOUBLE",
        // The end of the section goes on at its beginning, not at the pickup.
        "pickup 1 beat; snare : r & . . . ...r| 2400| STROKES",
        "pickup 1 beat; snare : r & r . . ...r| 330| DOUBLE",
        // One stroke in all goes round with nothing: the section itself has none.
        "pickup 1 beat; snare : r. & . . . .; kick : . & x . . .| 2160| STROKES",
      })
  void thePickupLeadsInAndTheRestGoesRound(String lines, long tempo, Fastest.Reason reason) {
    Fastest.Bound bound = extreme(lines.replace('&', '|'));
    assertThat(bound.perMinute()).isEqualTo(Time.of(tempo));
    assertThat(bound.reason()).isEqualTo(reason);
  }

  /** A grace note sounds 27.5 ms before its place: what follows it has so much more time. */
  @Test
  void graceNotesLeaveMoreTimeAfterThemAndLessBefore() {
    Time graceNote = Time.of(11, 400);
    Time sixteenthAtOne = Time.of(15);
    // The left makes the flam's small note on 1 and strikes on 1e.
    Fastest.Bound after = extreme("hands : 'rl.. . . .");
    assertThat(after.limb()).isEqualTo(Limb.LEFT_HAND);
    assertThat(after.perMinute()).isEqualTo(sixteenthAtOne.over(Time.of(1, 22).minus(graceNote)));
    // It strikes on 1 and makes the small note before 1e.
    Fastest.Bound before = extreme("hands : l'r.. . . .");
    assertThat(before.limb()).isEqualTo(Limb.LEFT_HAND);
    assertThat(before.perMinute()).isEqualTo(sixteenthAtOne.over(Time.of(1, 22).plus(graceNote)));
    // The right makes the small note on 1 and strikes on 1e and 1&: an eighth for three.
    Fastest.Bound three = extreme("hands : 'lrr. . . .");
    assertThat(three.limb()).isEqualTo(Limb.RIGHT_HAND);
    assertThat(three.reason()).isEqualTo(Fastest.Reason.STROKES);
    assertThat(three.perMinute())
        .isEqualTo(sixteenthAtOne.times(2).over(Time.of(1, 5).minus(graceNote)));
  }
}
