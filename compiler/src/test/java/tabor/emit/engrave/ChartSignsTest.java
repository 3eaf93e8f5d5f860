package tabor.emit.engrave;

import static org.assertj.core.api.Assertions.assertThat;
import static tabor.kit.Limb.RIGHT_HAND;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.emit.font.OpenFont;
import tabor.groove.ChartSigns;
import tabor.groove.Groove;
import tabor.notation.Speller;
import tabor.resolve.Options;
import tabor.testing.Sketch;

/** Rehearsal marks, cues and hold signs at the notes of sections that a chart plays. */
class ChartSignsTest {
  private static final String SECTIONS =
      """
      groove a
        kick : x x x x | x x x x
      groove b
        kick : x x x x
      chart song
      """;

  private static Map<String, ChartSigns> of(String chart) {
    Loader alone = (user, written) -> Loader.Found.trouble(user, Loader.Trouble.MISSING);
    return ChartSigns.of(
        new Compiler(alone).compile(Path.of("a.tabor"), SECTIONS + chart, Options.NONE).lesson());
  }

  private static final ChartSigns HOLD = new ChartSigns(null, List.of(), true);

  @Test
  void aLineThatPlaysASectionOnceSaysAll() {
    String chart =
        "  mark \"A\"\n"
            + "  cue \"Sing\"\n"
            + "  cue \"Break\" in bar 2\n"
            + "  play a\n"
            + "  hold 4 beats\n"
            + "  play b\n";
    assertThat(of(chart))
        .containsOnly(
            Map.entry(
                "a",
                new ChartSigns(
                    "A",
                    List.of(new ChartSigns.Cue(0, "Sing"), new ChartSigns.Cue(2, "Break")),
                    true)));
  }

  @Test
  void whatIsNotTrueOfEveryTimeIsNotSaid() {
    assertThat(of("  play a 2 times\n  hold 4 beats\n")).isEmpty();
    assertThat(of("  play a\n  play b\n  play a\n  hold 4 beats\n")).isEmpty();
    assertThat(of("  play a fill b\n  hold 4 beats\n")).isEmpty();
    assertThat(of("  play a 2 bars\n  hold 4 beats\n")).containsOnly(Map.entry("a", HOLD));
    assertThat(of("  play a 1 bar\n  hold 4 beats\n")).isEmpty();
    assertThat(of("  mark \"A\"\n  cue \"Break\" in bar 2\n  play b 2 times\n"))
        .containsOnly(Map.entry("b", new ChartSigns("A", List.of(), false)));
    // The mark is for what follows it, a rest too.
    assertThat(of("  mark \"A\"\n  rest 2 bars\n  play b\n")).isEmpty();
    assertThat(of("  mark \"Kick\"\n  play b for 1 minute\n")).isEmpty();
  }

  private static List<Shown.Piece> pieces(ChartSigns signs) {
    Groove groove = Sketch.groove("g").part(RIGHT_HAND, "snare", "x x x x | x X . .").done();
    Look look = Look.FULL.withSigns(signs);
    return Shown.of(Engraver.engrave(Speller.spell(groove), look, OpenFont.get()).whole().marks());
  }

  private static Box box(List<Shown.Piece> pieces, String kind) {
    return pieces.stream()
        .filter(piece -> piece.kind().equals(kind))
        .findFirst()
        .orElseThrow()
        .box();
  }

  /** Over the accent of the last stroke, under the counts; a held section is an end. */
  @Test
  void theHoldSignIsOverTheLastStroke() {
    List<Shown.Piece> pieces = pieces(HOLD);
    Box hold = box(pieces, "hold");
    Box accent = box(pieces, "sign");
    assertThat(hold.bottom()).isLessThan(accent.top());
    assertThat((hold.left() + hold.right()) / 2)
        .isBetween(accent.left() - 0.3, accent.right() + 0.3);
    assertThat(hold.top()).isGreaterThan(box(pieces, "counts").bottom());
    long repeats = pieces.stream().filter(piece -> piece.kind().equals("barlines")).count();
    assertThat(repeats).isEqualTo(3);
    assertThat(pieces(ChartSigns.NONE)).noneMatch(piece -> piece.kind().equals("hold"));
  }

  @Test
  void aCueBeginsAtItsBarAndTheMarkIsAboveIt() {
    List<Shown.Piece> pieces =
        pieces(new ChartSigns("A", List.of(new ChartSigns.Cue(2, "Break")), false));
    Box cue = box(pieces, "cue");
    Box counts = box(pieces, "counts");
    assertThat(cue.bottom()).isLessThan(counts.top());
    double barline = box(pieces, "barlines").right();
    assertThat(cue.left()).isBetween(barline - 0.5, barline + 0.5);
    assertThat(box(pieces, "rehearsal-mark").bottom()).isLessThan(cue.top());
  }
}
