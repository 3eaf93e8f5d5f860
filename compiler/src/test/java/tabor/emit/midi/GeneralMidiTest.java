package tabor.emit.midi;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.kit.Kits;
import tabor.kit.Limb;
import tabor.perform.Performer;
import tabor.perform.Sound;
import tabor.testing.Sketch;

/** Keys of "General MIDI System Level 1" (MMA 0007 / RP-003), table 3. */
class GeneralMidiTest {
  @ParameterizedTest
  @CsvSource({
    "kick, 36, Bass Drum 1", "snare, 38, Acoustic Snare", "snare.cross, 37, Side Stick",
    "hihat, 42, Closed Hi Hat", "hihat.open, 46, Open Hi-Hat", "hihat.half, 46, Open Hi-Hat",
    "hihat.foot, 44, Pedal Hi-Hat", "hihat.splash, 46, Open Hi-Hat", "ride, 51, Ride Cymbal 1",
    "ride.bell, 53, Ride Bell", "crash, 49, Crash Cymbal 1", "crash2, 57, Crash Cymbal 2",
    "splash, 55, Splash Cymbal", "china, 52, Chinese Cymbal", "cowbell, 56, Cowbell",
    "tom1, 50, High Tom", "tom2, 47, Low-Mid Tom", "floor, 43, High Floor Tom"
  })
  void everySurfaceSoundsOnItsKey(String surface, int key, String name) {
    Limb limb = Kits.FIVE_PIECE.surface(surface).isFoot() ? Limb.LEFT_FOOT : Limb.RIGHT_HAND;
    Groove groove = Sketch.groove("g").word(1, 0, limb, surface, "x").done();
    assertThat(Performer.once(groove, 0).sounds())
        .singleElement()
        .as(name)
        .extracting(Sound::key)
        .isEqualTo(key);
  }

  @Test
  void theTableHasEverySurface() throws NoSuchMethodException {
    CsvSource table =
        GeneralMidiTest.class
            .getDeclaredMethod("everySurfaceSoundsOnItsKey", String.class, int.class, String.class)
            .getAnnotation(CsvSource.class);
    assertThat(Stream.of(table.value()).map(row -> row.substring(0, row.indexOf(','))))
        .containsExactlyInAnyOrderElementsOf(Kits.FIVE_PIECE.surfaces().keySet());
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
