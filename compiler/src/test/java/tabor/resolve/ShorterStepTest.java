package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.groove.Groove;

/** {@code bars N} in a step: what stands beyond the end goes, dynamics and hairpins with it. */
class ShorterStepTest {
  private static final String THREE =
      "groove g\n kick : xx x x x | x x x xx | x . . .\n"
          + " dynamic p\n dynamic f at 2 in bar 2\n dynamic ff in bar 3\n"
          + " crescendo to f from 1 to 3\n crescendo to ff from 4 to 1 in bar 2\n"
          + " diminuendo to p from 3 in bar 2 to 1 in bar 3\nstep s\n ";

  private static Groove last(String lines) {
    var lesson = Compact.compile(THREE + lines + "\n").lesson();
    return lesson.grooves().get(lesson.grooves().size() - 1);
  }

  private static String marks(Groove groove) {
    return groove.marks().stream()
        .map(mark -> mark.loudness().word() + " " + mark.bar() + ":" + mark.at())
        .collect(Collectors.joining(", "));
  }

  private static String hairpins(Groove groove) {
    return groove.hairpins().stream()
        .map(pin -> pin.fromBar() + ":" + pin.from() + "-" + pin.toBar() + ":" + pin.to())
        .collect(Collectors.joining(", "));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "bars 1; p 1:0; 1:0-1:1/2; 5",
        "bars 2; p 1:0, f 2:1/4; 1:0-1:1/2, 1:3/4-2:0; 10",
        "bars 3; p 1:0, f 2:1/4, ff 3:0; 1:0-1:1/2, 1:3/4-2:0, 2:1/2-3:0; 11",
        // The bars are repeated from the first; dynamics stay where they are.
        "bars 5; p 1:0, f 2:1/4, ff 3:0; 1:0-1:1/2, 1:3/4-2:0, 2:1/2-3:0; 21",
      })
  void cutOrRepeated(String line, String marks, String hairpins, int strokes) {
    Groove groove = last(line);
    assertThat(marks(groove)).isEqualTo(marks);
    assertThat(hairpins(groove)).isEqualTo(hairpins);
    assertThat(groove.strokes()).hasSize(strokes);
  }

  /** However they are written, they are kept in order of time. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "dynamic mp in bar 1 at 4; p 1:0, mp 1:3/4, f 2:1/4, ff 3:0",
        "dynamic mp in bar 2; p 1:0, mp 2:0, f 2:1/4, ff 3:0",
        "dynamic mp in bar 3 at 4; p 1:0, f 2:1/4, ff 3:0, mp 3:3/4",
      })
  void inOrderOfTime(String line, String marks) {
    assertThat(marks(last(line))).isEqualTo(marks);
  }

  @Test
  void hairpinsInOrderOfTheirBeginnings() {
    assertThat(
            hairpins(
                last("crescendo to f from 2 to 3 in bar 1\n crescendo to f from 1 in bar 2 to 2")))
        .startsWith("1:0-1:1/2, 1:1/4-1:1/2, 1:3/4-2:0, 2:0-2:1/4, 2:1/2-3:0");
  }
}
