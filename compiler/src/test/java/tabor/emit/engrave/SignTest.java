package tabor.emit.engrave;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tabor.emit.font.OpenFont;
import tabor.emit.svg.SvgWriter;
import tabor.kit.Surface;
import tabor.notation.Written;
import tabor.testing.Goldens;

/** Our signs against the registration that SMuFL 1.4 describes. */
class SignTest {
  @Test
  void everyHeadRestAndFlagIsThere() {
    for (Written.Type type : Written.Type.values()) {
      Heads.rest(type);
      for (Surface.Head head : Surface.Head.values()) {
        Heads.of(head, type);
      }
      if (type.flags() > 0) {
        Heads.flag(type, true);
        Heads.flag(type, false);
      }
    }
    assertThatThrownBy(() -> Sign.of("gClef")).hasMessageContaining("gClef");
  }

  /** Heads are centred on their place, a space high, with the left edge at the origin. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "noteheadBlack",
        "noteheadHalf",
        "noteheadWhole",
        "noteheadXBlack",
        "noteheadDiamondBlack",
        "noteheadCircleX",
        "noteheadTriangleUpBlack",
      })
  void headsStandOnTheirPlace(String name) {
    Box box = Sign.of(name).box();
    assertThat(box.left()).isBetween(-0.02, 0.02);
    assertThat(box.top()).isBetween(-0.6, -0.4);
    assertThat(box.bottom()).isBetween(0.4, 0.6);
  }

  /** A stem joins at the right edge going up and at the left edge going down. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "noteheadBlack",
        "noteheadHalf",
        "noteheadXBlack",
        "noteheadXHalf",
        "noteheadDiamondBlack",
        "noteheadDiamondHalf",
        "noteheadTriangleUpBlack",
        "noteheadTriangleUpHalf",
        "noteheadCircleX",
        "noteheadCircleXHalf",
      })
  void stemsJoinAtTheEdges(String name) {
    Sign sign = Sign.of(name);
    assertThat(sign.anchor("stemUpSE").x())
        .isBetween(sign.box().right() - 0.05, sign.box().right() + 0.001);
    assertThat(sign.anchor("stemDownNW").x()).isBetween(0.0, 0.05);
  }

  @ParameterizedTest
  @CsvSource({
    // A whole rest hangs from its line, a half rest sits on it.
    "restWhole, 0, 0.54",
    "restHalf, -0.54, 0",
    // Digits of a meter are two spaces high, centred.
    "timeSig4, -1, 1",
    "timeSig8, -1, 1",
    "repeat1Bar, -1, 1",
    "unpitchedPercussionClef1, -1, 1",
  })
  void heights(String name, double top, double bottom) {
    Box box = Sign.of(name).box();
    assertThat(box.top()).isBetween(top - 0.03, top + 0.03);
    assertThat(box.bottom()).isBetween(bottom - 0.03, bottom + 0.03);
  }

  /** Looked at at 400 %: every sign on a sheet, each on its lines, with its name. */
  @Test
  void theSheetOfSigns() {
    Goldens.check("tabor/emit/engrave/signs.svg", SvgWriter.file(sheet(), "signs"));
  }

  private static Drawing sheet() {
    List<Mark> marks = new ArrayList<>();
    int i = 0;
    for (String name : Sign.names()) {
      double x = 1.5 + (i % 8) * 7.0;
      double y = 6 + Math.floorDiv(i, 8) * 12.0;
      for (int line = -2; line <= 2; line++) {
        marks.add(new Mark.Ink(Contour.band(x - 0.8, y + line, x + 3.4, y + line, 0.06), 0.3));
      }
      marks.add(Mark.Group.of(name, List.of(new Mark.Ink(Sign.of(name).at(x, y, 1)))));
      double width = OpenFont.get().width(name, 0.6);
      marks.add(new Mark.Words(name, x - 0.8, y + 5.4, 0.6, Mark.Align.LEFT, width));
      i++;
    }
    double height = 12.0 * Math.floorDiv(i + 7, 8);
    return new Drawing(57, height, "Signs", "All signs of the engraver", marks);
  }
}
