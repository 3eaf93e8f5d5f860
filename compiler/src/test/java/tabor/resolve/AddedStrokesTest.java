package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.groove.Groove;
import tabor.groove.Stroke;

/** What an added stroke joins: the line it is printed in, the stroke that is there already. */
class AddedStrokesTest {
  private static Groove groove(String lines) {
    return Compact.compile("groove g\n " + lines.replace("/ ", "\n ") + "\n")
        .lesson()
        .grooves()
        .get(0);
  }

  /**
   * Into the line go the hands' strokes if the line has the hands to itself, and those of a pedal
   * that is played in the line and nowhere else.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "line : rl k. . ./ add snare at 4; true",
        "line : rl k. . ./ add ride at 4; true",
        "line : rl k. . ./ hihat : . . x ./ add snare at 4; false",
        "hihat : x . . ./ line : .l k. . ./ add snare at 4; false",
        "snare : x . . ./ add snare at 4; false",
        "line : .. k. . ./ add snare at 4; true",
        "line : rl k. . ./ add kick at 4; true",
        "line : rl k. . ./ kick : . . x ./ add kick at 4; false",
        "line : rl k. . ./ hihat.foot : . . x ./ add kick at 4; true",
        "line : rl .. . ./ add kick at 4; false",
        "line : rl p. . ./ add kick at 4; false",
        "line : rl k. . ./ hihat : . . x ./ add kick at 4; true",
      })
  void theLineItIsPrintedIn(String lines, boolean inLine) {
    List<Stroke> strokes = groove(lines).strokes();
    assertThat(strokes.get(strokes.size() - 1))
        .matches(stroke -> stroke.at().toString().equals("3/4"))
        .matches(stroke -> stroke.inLine() == inLine);
  }

  @Test
  void whatIsThereIsFoundInEveryBar() {
    String bars =
        "groove g\n snare : x xx x xxx | x xx . x | xxx x x x\n hihat : x x x x | % | %\n";
    for (String at :
        List.of("1 in bar 1", "2& in bar 1", "4a in bar 1", "4 in bar 2", "1a in bar 3")) {
      assertThat(Compact.hints(bars + " add snare at " + at + "\n"))
          .as(at)
          .containsExactly("4 already-there");
    }
    for (String at : List.of("3 in bar 2", "1& in bar 2", "4& in bar 3")) {
      assertThat(Compact.hints(bars + " add snare at " + at + "\n")).as(at).isEmpty();
    }
  }

  /** A limb that is named is given to the open stroke that is there. */
  @Test
  void anAddedLimbIsOneOfTwo() {
    assertThat(Compact.lastOfFine("groove g\n snare : r . . .\n add snare with left at 1\n"))
        .isEqualTo("0 R snare, 0 L snare");
    assertThat(Compact.hints("groove g\n snare : r . . .\n add snare with right at 1\n"))
        .containsExactly("3 already-there");
  }
}
