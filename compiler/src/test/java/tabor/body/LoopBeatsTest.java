package tabor.body;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import tabor.groove.Groove;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.rhythm.Time;
import tabor.testing.Sketch;

/** The beats of a loop, where they are not all of one length. */
class LoopBeatsTest {
  private static final long EIGHTH = Loop.WHOLE / 8;

  /** Bar 0 counts as one of the first meter; then 2 + 2 + 3 eighths and three quarters by turns. */
  @Test
  void beatsOfMetersByTurns() {
    Meter uneven = new Meter(7, 8, List.of(Time.of(2, 8), Time.of(2, 8), Time.of(3, 8)));
    Meters meters = new Meters(List.of(uneven, Meter.of(3, 4)));
    Groove.Setting setting = Sketch.groove("a").meters(meters).done().setting();
    Loop loop = Loop.of(setting, 4, Time.ZERO, List.of(), List.of(), true);
    List<Long> eighths = IntStream.range(0, 15).mapToObj(beat -> loop.beat(beat) / EIGHTH).toList();
    assertThat(eighths).containsExactly(2L, 2L, 3L, 2L, 2L, 3L, 2L, 2L, 2L, 2L, 2L, 3L, 2L, 2L, 2L);
    assertThat(loop.length).isEqualTo(2 * (7 + 6) * EIGHTH);
  }
}
