package tabor.emit.engrave;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tabor.emit.font.OpenFont;
import tabor.groove.Groove;
import tabor.kit.Kits;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.notation.Speller;
import tabor.testing.PageTables;
import tabor.testing.PageTables.Row;
import tabor.testing.Sketch;

/** Each piece of the kit is drawn where docs/surfaces.md has it, with its head. */
class StaffPlacesTest {
  private static List<Row> surfaces() {
    return PageTables.of("surfaces.md").with("place on the staff");
  }

  /** Staff spaces below the top line, worked out from the words of the table. */
  private static double below(String place) {
    String[] words = place.split(" ", -1);
    return switch (place) {
      case "space above the staff" -> -0.5;
      case "space below the staff" -> 4.5;
      case "space above ledger line 1" -> -1.5;
      default ->
          switch (words[0]) {
            case "line" -> 5 - Integer.parseInt(words[1]);
            case "space" -> 4.5 - Integer.parseInt(words[1]);
            case "ledger" -> -Integer.parseInt(words[2]);
            default -> throw new IllegalArgumentException(place);
          };
    };
  }

  private static String glyph(String head) {
    return switch (head) {
      case "normal" -> "noteheadBlack";
      case "x" -> "noteheadXBlack";
      case "diamond" -> "noteheadDiamondBlack";
      case "triangle" -> "noteheadTriangleUpBlack";
      default -> throw new IllegalArgumentException(head);
    };
  }

  @ParameterizedTest
  @MethodSource("surfaces")
  void aPieceStandsInItsPlace(Row row) {
    String name = row.first();
    double below = below(row.cell("place on the staff"));
    String head = glyph(row.cell("note head"));
    Surface surface = Kits.FIVE_PIECE.surfaces().get(name);
    Limb limb = surface.isFoot() ? Limb.LEFT_FOOT : Limb.RIGHT_HAND;
    Groove groove = Sketch.groove("g").part(limb, name, "x . . .").done();
    Engraving.StaffSystem system =
        Engraver.engrave(Speller.spell(groove), Look.FULL, OpenFont.get()).systems().get(0);
    Mark.Glyph glyph = head(system.drawing().marks());
    assertThat(glyph.sign().name()).isEqualTo(head);
    assertThat(glyph.y() - system.staffTop()).isBetween(below - 1e-6, below + 1e-6);
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
