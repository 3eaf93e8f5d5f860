package tabor.emit.midi;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.kit.Kits;
import tabor.kit.Limb;
import tabor.perform.Performer;
import tabor.perform.Sound;
import tabor.testing.PageTables;
import tabor.testing.PageTables.Row;
import tabor.testing.Sketch;

/**
 * Keys of "General MIDI System Level 1" (MMA 0007 / RP-003), table 3, as docs/surfaces.md has them.
 */
class GeneralMidiTest {
  private static List<Row> surfaces() {
    return PageTables.of("surfaces.md").with("key");
  }

  @ParameterizedTest
  @MethodSource("surfaces")
  void everySurfaceSoundsOnItsKey(Row row) {
    String surface = row.first();
    Limb limb = Kits.FIVE_PIECE.surface(surface).isFoot() ? Limb.LEFT_FOOT : Limb.RIGHT_HAND;
    Groove groove = Sketch.groove("g").word(1, 0, limb, surface, "x").done();
    assertThat(Performer.once(groove, 0).sounds())
        .singleElement()
        .as(row.cell("General MIDI calls it"))
        .extracting(Sound::key)
        .isEqualTo(row.number("key"));
  }

  @Test
  void theClickIsTheTwoWoodBlocks() {
    Groove groove = Sketch.groove("g").done();
    Chart chart =
        Sketch.chart(
            new Chart.CountIn(1, groove, groove.setting().tempo()),
            new Chart.SetClick(Chart.Click.EIGHTHS),
            new Chart.Rest(1, groove, groove.setting().tempo()));
    Set<Integer> keys = new HashSet<>();
    Performer.chart(chart).sounds().forEach(sound -> keys.add(sound.key()));
    // 76 Hi Wood Block, 77 Low Wood Block.
    assertThat(keys).containsExactlyInAnyOrder(76, 77);
    assertThat(Performer.chart(chart).sounds()).hasSize(12);
  }
}
