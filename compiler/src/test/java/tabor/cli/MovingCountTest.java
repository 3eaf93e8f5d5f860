package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import tabor.groove.Groove;
import tabor.kit.Limb;
import tabor.perform.Made;
import tabor.perform.Performance;
import tabor.perform.Performer;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

class MovingCountTest {
  private static String at(Performance performance, long num, long den) {
    return MovingCount.line(performance, Time.of(num, den)).stripTrailing();
  }

  @Test
  void showsTheBarAndThePresentBeat() {
    Groove groove =
        Made.groove("g")
            .bars(2)
            .pickup(Time.of(1, 4))
            .word(0, 3, Limb.LEFT_HAND, "snare", "x")
            .done();
    Performance played = Performer.once(groove, 1);
    assertThat(at(played, 0, 1)).isEqualTo("  count-in              [1] 2  3  4");
    assertThat(at(played, 5, 8)).isEqualTo("  count-in               1  2 [3] 4");
    assertThat(at(played, 7, 8)).isEqualTo("  pickup                 1  2  3 [4]");
    assertThat(at(played, 9, 8)).isEqualTo("  bar 1 of 2            [1] 2  3  4");
    assertThat(at(played, 23, 8)).isEqualTo("  bar 2 of 2             1  2  3 [4]");
    assertThat(at(played, 4, 1)).isEqualTo("  bar 2 of 2             1  2  3  4");
  }

  @Test
  void countsTheBeatsOfTheMeter() {
    Groove six = Made.groove("six").meter(Meter.of(6, 8)).done();
    assertThat(at(Performer.once(six, 0), 3, 8)).isEqualTo("  bar 1 of 1             1 [2]");
  }
}
