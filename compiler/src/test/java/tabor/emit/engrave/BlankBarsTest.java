package tabor.emit.engrave;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.emit.font.OpenFont;
import tabor.notation.Speller;
import tabor.rhythm.Meter;
import tabor.testing.Sketch;

/** Empty staves to write on, and signs that stand beside notes. */
class BlankBarsTest {
  @Test
  void blankBarsHaveStaffAndCountsAndNoRests() {
    Engraving engraving =
        Engraver.engrave(
            Speller.spell(Sketch.groove("g").meter(Meter.of(3, 4)).bars(4).done()),
            Look.FULL.withBlankBars(),
            OpenFont.get());
    List<Shown.Piece> pieces = Shown.of(engraving.whole().marks());
    assertThat(pieces).noneMatch(piece -> piece.kind().equals("rest"));
    assertThat(pieces.stream().filter(p -> p.kind().equals("counts")).map(Shown.Piece::text))
        .containsExactly("1", "2", "3", "1", "2", "3", "1", "2", "3", "1", "2", "3");
    assertThat(pieces).anyMatch(piece -> piece.kind().equals("staff"));
  }

  @Test
  void aRehearsalMarkHoldsItsLetter() {
    Mark mark = RehearsalMark.at("B", 2, 3, 2, OpenFont.get());
    List<Shown.Piece> pieces = Shown.of(List.of(mark));
    Box frame = pieces.get(0).box();
    Box letter = pieces.get(1).box();
    assertThat(letter.left()).isGreaterThan(frame.left());
    assertThat(letter.right()).isLessThan(frame.right());
    assertThat(letter.top()).isGreaterThan(frame.top());
  }
}
