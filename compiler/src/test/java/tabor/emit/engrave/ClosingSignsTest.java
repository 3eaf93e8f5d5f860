package tabor.emit.engrave;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.emit.font.OpenFont;
import tabor.groove.ChartSigns;
import tabor.kit.Limb;
import tabor.notation.Speller;
import tabor.testing.Sketch;

/** How sections begin and end: what is played on has repeat signs, what ends has none. */
class ClosingSignsTest {
  /** Where repeat dots stand, from left to right. */
  private static List<Double> dots(Sketch sketch, Look look) {
    Engraving engraving = Engraver.engrave(Speller.spell(sketch.done()), look, OpenFont.get());
    List<Double> places = new ArrayList<>();
    engraving.systems().forEach(system -> collect(system.drawing().marks(), places));
    return places;
  }

  private static void collect(List<Mark> marks, List<Double> places) {
    for (Mark mark : marks) {
      if (mark instanceof Mark.Group group) {
        collect(group.marks(), places);
      } else if (mark instanceof Mark.Glyph glyph && glyph.sign().name().equals("repeatDots")) {
        places.add(glyph.x());
      }
    }
  }

  private static Sketch bars(String words) {
    return Sketch.groove("g").part(Limb.RIGHT_HAND, "snare", words);
  }

  @Test
  void aSectionIsALoopToBePlayedOn() {
    assertThat(dots(bars("x x x x"), Look.FULL)).hasSize(1);
  }

  @Test
  void afterAPickupTheRepeatBeginsAtBarOne() {
    List<Double> dots = dots(bars("x | x x x x").pickup(1), Look.FULL);
    assertThat(dots).hasSize(2);
    assertThat(dots.get(0)).isLessThan(dots.get(1));
  }

  @Test
  void whatIsHeldAtItsEndIsNotRepeated() {
    ChartSigns held = new ChartSigns(null, List.of(), true);
    assertThat(dots(bars("x x x x"), Look.FULL.withSigns(held))).isEmpty();
    assertThat(dots(bars("x | x x x x").pickup(1), Look.FULL.withSigns(held))).isEmpty();
  }
}
