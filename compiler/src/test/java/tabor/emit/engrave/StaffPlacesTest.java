package tabor.emit.engrave;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.emit.font.OpenFont;
import tabor.groove.Groove;
import tabor.kit.Kits;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.notation.Speller;
import tabor.testing.Sketch;

/**
 * Where each piece of the kit stands on the drawn staff and with which head. Places as read off
 * from Weinberg, "Guidelines for Drumset Notation", Percussive Notes, June 1994, in secondary
 * sources; foot splash, second crash, china and splash (here with the diamond) from memory.
 */
class StaffPlacesTest {
  @ParameterizedTest
  @CsvSource({
    // surface, spaces below the top line, head
    "kick, 3.5, noteheadBlack",
    "hihat.foot, 4.5, noteheadXBlack",
    "hihat.splash, 4.5, noteheadXBlack",
    "snare, 1.5, noteheadBlack",
    "snare.cross, 1.5, noteheadXBlack",
    "tom1, 0.5, noteheadBlack",
    "tom2, 1, noteheadBlack",
    "floor, 2.5, noteheadBlack",
    "ride, 0, noteheadXBlack",
    "ride.bell, 0, noteheadDiamondBlack",
    "hihat, -0.5, noteheadXBlack",
    "hihat.open, -0.5, noteheadXBlack",
    "hihat.half, -0.5, noteheadXBlack",
    "crash, -1, noteheadXBlack",
    "crash2, -1.5, noteheadXBlack",
    "splash, -1.5, noteheadDiamondBlack",
    "china, -2, noteheadXBlack",
    "cowbell, 0.5, noteheadTriangleUpBlack",
  })
  void aPieceStandsInItsPlace(String name, double below, String head) {
    Surface surface = Kits.FIVE_PIECE.surfaces().get(name);
    Limb limb = surface.isFoot() ? Limb.LEFT_FOOT : Limb.RIGHT_HAND;
    Groove groove = Sketch.groove("g").part(limb, name, "x . . .").done();
    Engraving.StaffSystem system =
        Engraver.engrave(Speller.spell(groove), Look.FULL, OpenFont.get()).systems().get(0);
    Mark.Glyph glyph = head(system.drawing().marks());
    assertThat(glyph.sign().name()).isEqualTo(head);
    assertThat(glyph.y() - system.staffTop()).isBetween(below - 1e-6, below + 1e-6);
  }

  @Test
  void theTableHasEverySurface() throws NoSuchMethodException {
    CsvSource table =
        StaffPlacesTest.class
            .getDeclaredMethod("aPieceStandsInItsPlace", String.class, double.class, String.class)
            .getAnnotation(CsvSource.class);
    assertThat(Stream.of(table.value()).map(row -> row.substring(0, row.indexOf(','))))
        .containsExactlyInAnyOrderElementsOf(Kits.FIVE_PIECE.surfaces().keySet());
  }

  private static Mark.Glyph head(List<Mark> marks) {
    for (Mark mark : marks) {
      if (mark instanceof Mark.Group group && group.classes().contains("stroke")) {
        return (Mark.Glyph)
            group.marks().stream().filter(Mark.Glyph.class::isInstance).findFirst().orElseThrow();
      }
    }
    throw new AssertionError("no head");
  }
}
