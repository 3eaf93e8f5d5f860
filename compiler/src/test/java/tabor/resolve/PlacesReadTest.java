package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tabor.diagnostic.Diagnostic;

/** Which strokes a place means, and what of a line is carried out where a part of it misses. */
class PlacesReadTest {
  private static String text(String lines) {
    return "groove g\n " + lines.replace("/ ", "\n ") + "\n";
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        // A note value names places as counts do: with the whole group that begins there.
        "hands : rlrl r.l. . ./ accent hands at every eighth; hands : rlrl r.l. . ./ accent hands"
            + " at 1 1& 2 2&",
        "hands : {rl}r .{lr} . ./ accent hands at every eighth; hands : {rl}r .{lr} . ./ accent"
            + " hands at 1 1& 2&",
        "hands : rlr lrl . ./ accent hands at every eighth; hands : rlr lrl . ./ accent hands at"
            + " 1 2",
        // By the part's own divisions first, then by those of others, then plainly.
        "hihat : xxxx xxxx . ./ snare : . x.x . ./ accent snare at 2a; hihat : xxxx xxxx . ./"
            + " snare : . x.X . .",
        "tom1 : . xxx . ./ kick : x . . ./ add kick at 2a; tom1 : . xxx . ./ kick : x ..x . .",
        "time 6/8/ kick : x x/ add kick at 1&; time 6/8/ kick : xx. x",
        // A place of a group, the part's own group first.
        "hihat : {xxx}x . . ./ kick : . x . ./ add kick at 1.1.2; hihat : {xxx}x . . ./ kick :"
            + " {.x.}. x . .",
        "hihat : {xxx}x . . ./ tom1 : {xx}. . . ./ accent tom1 at 1.1.2; hihat : {xxx}x . . ./"
            + " tom1 : {xX}. . . .",
        "hands : {r{lr}}{r{lr}} {r{lr}}r r ./ accent hands at 1.1.2; hands : {r{LR}}{r{lr}}"
            + " {r{lr}}r r .",
        "hands : {r{lr}}{r{lr}} {r{lr}}r r ./ accent hands at 1.2.2; hands : {r{lr}}{r{LR}}"
            + " {r{lr}}r r .",
        "hands : {r{lr}}{r{lr}} {r{lr}}r r ./ accent hands at 2.1.2; hands : {r{lr}}{r{lr}}"
            + " {r{LR}}r r .",
        "hands : {r{lr}}{r{lr}} {r{lr}}r r ./ accent hands at 1.1.2.2; hands : {r{lR}}{r{lr}}"
            + " {r{lr}}r r .",
        // Two strokes at one place that go to one surface keep a hand each.
        "hihat : x . . ./ snare : x . . ./ hands play tom1; tom1 : b . . .",
      })
  void theSameAs(String lines, String others) {
    String edited = Compact.lastOfFine(text(lines));
    assertThat(edited).isEqualTo(Compact.last(text(others)));
  }

  @Test
  void nothingIsLeftOutWhereNothingIsChosen() {
    String line = "snare : . x . x/ only tom1";
    assertThat(Compact.problems(text(line))).containsExactly("3 nothing-there");
    assertThat(Compact.last(text(line))).isEqualTo("1/4 R snare, 3/4 R snare");
  }

  /** In a variation that has only some of the places, the line does what it can. */
  @Test
  void aVariationIsGivenWhatItHas() {
    assertThat(
            Compact.compile(
                    text("snare : . x . x")
                        + "sheet s from g\n each drop snare at 2 4\n accent snare at 2 4\n")
                .lesson()
                .sheets()
                .get(0)
                .grooves()
                .stream()
                .map(Compact::of)
                .collect(Collectors.toList()))
        .isEqualTo(List.of("3/4 R snare>", "1/4 R snare>"));
  }

  /** An open stroke on a surface that a written one strikes there as well is that stroke. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "snare : x . . ./ left : s . . .; 0 L snare",
        "left : s . . ./ snare : x . . .; 0 L snare",
        "snare : X . . ./ left : s . . .; 0 L snare>",
        "snare : x . . ./ left : S . . .; 0 L snare>",
        "snare : x . . ./ hihat : x . . ./ left : s . . .; 0 R hihat, 0 L snare",
      })
  void oneStrokeInOnePlace(String lines, String strokes) {
    assertThat(Compact.lastOfFine(text(lines))).isEqualTo(strokes);
  }

  /** Strokes of a diddle that is held keep a hand busy, so the other takes what comes meanwhile. */
  @Test
  void handsAreChosenAgainWhereAnOrnamentKeepsOneBusy() {
    String row = text("tom1 : x--- . . ./ floor : ..xx . . .");
    assertThat(Compact.lastOfFine(row)).isEqualTo("0 R tom1, 1/8 R floor, 3/16 L floor");
    String diddled = Compact.last(row + "step s\n diddle tom1 at 1\n");
    assertThat(diddled)
        .isIn(
            "0 R tom1+diddle, 1/8 L floor, 3/16 L floor",
            "0 L tom1+diddle, 1/8 R floor, 3/16 R floor");
  }

  /** It is told at the later of the two lines, which points to the other. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "bars 3/ ostinato kick : x . . . | . x . .",
        "ostinato kick : x . . . | . x . ./ bars 3",
        "snare : x . . . | x . . . | x . . ./ ostinato kick : x . . . | . x . .",
        "ostinato kick : x . . . | . x . ./ snare : x . . . | x . . . | x . . .",
      })
  void anOstinatoDividesTheSection(String lines) {
    assertThat(Compact.problems(text(lines))).containsExactly("3 bar-count");
    Diagnostic told = Compact.only(text(lines));
    assertThat(told.message()).isEqualTo("an ostinato of 2 bars does not divide 3 bars evenly");
    assertThat(told.labels()).hasSize(1);
    assertThat(lines).startsWith(told.labels().get(0).spot().text());
    assertThat(told.labels().get(0).text())
        .isEqualTo(lines.startsWith("ostinato") ? "the ostinato" : "3 bars here");
  }

  /**
   * What says how long the section is is the line with {@code bars}, not a part that is shorter.
   */
  @Test
  void anOstinatoIsMeasuredByTheLineWithBars() {
    String lines = "bars 3/ ostinato kick : x . . . | . x . ./ snare : x . . .";
    assertThat(Compact.problems(text(lines))).containsExactly("3 bar-count", "4 bar-count");
  }
}
