package tabor.emit.engrave;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.emit.font.OpenFont;
import tabor.groove.Groove;
import tabor.kit.Limb;
import tabor.notation.Speller;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.testing.Sketch;

/** Where meters are printed. */
class MeterSignsTest {
  private static final Meter FOUR = Meter.COMMON;
  private static final Meter THREE = Meter.of(3, 4);
  private static final Meter SIX = Meter.of(6, 8);

  private static Groove groove(int bars, Meter... cycle) {
    Sketch sketch = Sketch.groove("g").meters(new Meters(List.of(cycle))).bars(bars);
    for (int bar = 1; bar <= bars; bar++) {
      Meter meter = cycle[(bar - 1) % cycle.length];
      for (int beat = 0; beat < meter.beatCount(); beat++) {
        sketch.word(bar, beat, Limb.RIGHT_HAND, "snare", "xxxx");
      }
    }
    return sketch.done();
  }

  private static String printed(Groove groove) {
    List<String> found = new ArrayList<>();
    for (int bar = groove.firstBar(); bar <= groove.bars(); bar++) {
      List<Meter> meters = MeterSigns.at(groove, bar);
      found.add(String.join(" ", meters.stream().map(Meter::signature).toList()));
    }
    return String.join("|", found);
  }

  @Test
  void whatAlternatesBarByBarStandsSideBySide() {
    assertThat(printed(groove(4, FOUR, THREE))).isEqualTo("4/4 3/4|||");
    assertThat(printed(groove(3, FOUR, THREE, SIX))).isEqualTo("4/4 3/4 6/8||");
  }

  @Test
  void elseEachChangeIsPrinted() {
    assertThat(printed(groove(6, FOUR, FOUR, THREE))).isEqualTo("4/4||3/4|4/4||3/4");
    assertThat(printed(groove(5, FOUR, THREE, SIX, THREE))).isEqualTo("4/4|3/4|6/8|3/4|4/4");
    // Not once round: three quarters are the only other bar.
    assertThat(printed(groove(2, FOUR, THREE, SIX))).isEqualTo("4/4|3/4");
    assertThat(printed(groove(3, FOUR))).isEqualTo("4/4||");
  }

  @Test
  void whatLooksAlikeIsNoChange() {
    Meter inTwo = new Meter(4, 4, List.of(FOUR.bar().over(2), FOUR.bar().over(2)));
    assertThat(printed(groove(4, FOUR, inTwo))).isEqualTo("4/4|||");
    Meter grouped = new Meter(4, 4, FOUR.beats(), List.of(3, 1));
    assertThat(printed(groove(2, FOUR, grouped))).isEqualTo("4/4 4/4|");
  }

  /** A line that ends before a change warns of it; the next line says it again. */
  @Test
  void aLineEndsWithTheMeterOfTheNext() {
    Engraving engraving =
        Engraver.engrave(
            Speller.spell(groove(9, FOUR, FOUR, THREE)), Look.FULL.withWidth(60), OpenFont.get());
    assertThat(engraving.systems()).hasSizeGreaterThan(2);
    int drawn = 0;
    int lineStarts = 0;
    for (Engraving.StaffSystem system : engraving.systems()) {
      int first = system.moments().get(0).bar();
      if (first > 1 && !MeterSigns.at(engraving.score().groove(), first).isEmpty()) {
        lineStarts++;
      }
      drawn +=
          (int)
              system.drawing().marks().stream()
                  .filter(m -> m instanceof Mark.Group g && g.classes().contains("meter"))
                  .count();
    }
    // Bars 1, 3, 4, 6, 7, 9.
    assertThat(drawn).isEqualTo(6 + lineStarts);
    assertThat(lineStarts).isPositive();
  }
}
