package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.kit.Limb;
import tabor.perform.Performance;
import tabor.perform.Performer;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;
import tabor.testing.Sketch;

class MovingCountTest {
  private static String at(Performance performance, long num, long den) {
    return new MovingCount(performance, System.out).line(Time.of(num, den)).stripTrailing();
  }

  @Test
  void showsTheBarAndThePresentBeat() {
    Groove groove =
        Sketch.groove("g")
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
  void inAChartItSaysWhichSectionAtWhichTempo() {
    Groove a = Sketch.groove("a").tempo(60).done();
    Groove b = Sketch.groove("b").tempo(62).done();
    Performance played =
        Performer.chart(
            Sketch.chart(
                new Chart.Play(List.of(Sketch.turn(a), Sketch.turn(b)), 1),
                new Chart.Rest(1, b, b.setting().tempo())));
    assertThat(at(played, 1, 4))
        .isEqualTo("  a, bar 1 of 1, tempo 60                    1 [2] 3  4");
    assertThat(at(played, 2, 1)).startsWith("  rest, bar 1 of 1, tempo 62  ");
  }

  @Test
  void countsTheBeatsOfTheMeter() {
    Groove six = Sketch.groove("six").meter(Meter.of(6, 8)).done();
    assertThat(at(Performer.once(six, 0), 3, 8)).isEqualTo("  bar 1 of 1             1 [2]");
  }
}
