package tabor.emit.engrave;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.emit.font.OpenFont;
import tabor.groove.Groove;
import tabor.kit.Limb;
import tabor.testing.Sketch;
import tabor.words.Language;
import tabor.words.Words;

/** The key: heads on their staff, signs beside it where there is room, names on one line. */
class KeyTest {
  private static final Groove GROOVE =
      Sketch.groove("g")
          .part(Limb.RIGHT_HAND, "hihat", "X x X x")
          .part(Limb.LEFT_HAND, "snare", ". g . g")
          .part(Limb.LEFT_FOOT, "hihat.foot", "x . x .")
          .done();

  private static List<Shown.Piece> names(Drawing drawing) {
    return Shown.of(drawing.marks()).stream()
        .filter(piece -> piece.kind().equals("key") && !piece.text().isEmpty())
        .toList();
  }

  private static List<Drawing> rows(double width) {
    return Key.rows(List.of(GROOVE), Words.english(), width, 2, OpenFont.get());
  }

  @Test
  void signsStandBesideTheStaff() {
    List<Drawing> rows = rows(90);
    assertThat(rows).hasSize(1);
    List<Shown.Piece> names = names(rows.get(0));
    assertThat(names.stream().map(Shown.Piece::text))
        .containsExactly(
            "hi-hat with the foot", "snare", "hi-hat", "accent", "ghost stroke", "both at once");
    for (int i = 1; i < names.size(); i++) {
      assertThat(names.get(i).box().left()).isGreaterThan(names.get(i - 1).box().right());
      // All are on one line, whatever letters they have.
      assertThat(names.get(i).box().bottom())
          .isBetween(names.get(0).box().bottom() - 0.01, names.get(0).box().bottom() + 0.01);
    }
    assertThat(names.get(5).box().right()).isLessThanOrEqualTo(rows.get(0).width());
    double staff =
        Shown.of(rows.get(0).marks()).stream()
            .filter(piece -> piece.kind().equals("staff"))
            .mapToDouble(piece -> piece.box().right())
            .max()
            .orElseThrow();
    assertThat(staff).isLessThan(names.get(3).box().left());
  }

  private static List<String> names(Groove groove) {
    return Key.rows(List.of(groove), Words.of(Language.DE), 90, 2, OpenFont.get()).stream()
        .flatMap(row -> names(row).stream())
        .map(Shown.Piece::text)
        .toList();
  }

  /** The grid explains its two letters, the page its one. */
  @Test
  void theLetterForBothIsExplainedWhereItStands() {
    Sketch both = Sketch.groove("g").word(1, 0, Limb.RIGHT_HAND, "hihat", "xx");
    assertThat(names(both.word(1, 1, Limb.LEFT_HAND, "snare", "x").done()))
        .doesNotContain("beide zugleich");
    Sketch here = Sketch.groove("g").word(1, 0, Limb.RIGHT_HAND, "hihat", "xx");
    assertThat(names(here.word(1, 0, Limb.LEFT_HAND, "snare", ".x").done()))
        .contains("beide zugleich");
    Sketch foot = Sketch.groove("g").word(1, 0, Limb.RIGHT_HAND, "hihat", "xx");
    assertThat(names(foot.word(1, 0, Limb.RIGHT_FOOT, "kick", "xx").done()))
        .doesNotContain("beide zugleich");
    // Feet on their own pedals have no letters, two feet on one drum have.
    Sketch usual = Sketch.groove("g").word(1, 0, Limb.RIGHT_FOOT, "kick", "xx");
    assertThat(names(usual.word(1, 0, Limb.LEFT_FOOT, "hihat.foot", "x").done()))
        .doesNotContain("beide zugleich");
    Sketch feet = Sketch.groove("g").word(1, 0, Limb.RIGHT_FOOT, "kick", "xx");
    assertThat(names(feet.word(1, 0, Limb.LEFT_FOOT, "kick", "x").done()))
        .contains("beide zugleich");
  }

  @Test
  void whatStandsUnderTheStaffClearsTheNames() {
    Drawing row = rows(90).get(0);
    double names = names(row).stream().mapToDouble(piece -> piece.box().top()).min().orElseThrow();
    assertThat(Shown.of(row.marks()))
        .filteredOn(piece -> !piece.kind().equals("key"))
        .allMatch(piece -> piece.box().bottom() < names);
  }

  @Test
  void whereThereIsNoRoomTheyStandBelow() {
    List<Drawing> rows = rows(48);
    assertThat(rows).hasSize(2);
    assertThat(names(rows.get(1)).stream().map(Shown.Piece::text))
        .containsExactly("accent", "ghost stroke", "both at once");
    assertThat(rows).allMatch(row -> row.width() <= 48);
  }
}
