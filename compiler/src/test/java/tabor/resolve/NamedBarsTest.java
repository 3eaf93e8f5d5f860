package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;

/** Bars that lines name, that strokes move to, and that have too many beats. */
class NamedBarsTest {
  private static final String TWO = "groove g\n kick : x . . . | x . . .\n";

  @ParameterizedTest
  @CsvSource({
    "in bars 1 3, 3",
    "in bars 4 3, 4",
    "in bars 1 to 3, 3",
    "in bars 3 to 4, 3",
    "in bars 0 to 2, 0",
    "in bar 3, 3",
    "in every 3rd bar, every 3rd bar",
  })
  void aBarThatIsNotThereIsToldAtItsNumber(String bars, String at) {
    for (String line : new String[] {"accent kick ", "add snare at 2 "}) {
      Diagnostic told = Compact.only(TWO + " " + line + bars + "\n", Severity.WARNING);
      assertThat(told.code().word()).isEqualTo("count-outside-bar");
      assertThat(told.spot().text()).isEqualTo(at);
    }
  }

  @Test
  void aCountIsFoundInEachBarNamedAndInOneOfAllOthers() {
    String text = "groove g\n kick : x . . . | xx . . .\nstep s\n ";
    for (String at : new String[] {"1&", "1& to 2"}) {
      assertThat(Compact.problems(text + "accent kick at " + at + "\n")).isEmpty();
      assertThat(Compact.problems(text + "accent kick at " + at + " in bars 1 2\n"))
          .containsExactly("4 nothing-there");
    }
    assertThat(Compact.problems(text + "accent kick at every & in bars 1 2\n"))
        .as("every passes over bars without one")
        .isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      value = {
        "later by 1 bar; | 0 rf kick",
        "later by 2 bars; | | 0 rf kick",
        "later by 3 bars; 0 rf kick",
        "earlier by 1 bar; | | 0 rf kick",
        "earlier by 2 bars; | 0 rf kick",
        "later by 5 quarters; | 1/4 rf kick",
        "earlier by 1 quarter; | | 3/4 rf kick",
      },
      delimiter = ';')
  void aShiftGoesRoundTheSection(String by, String strokes) {
    assertThat(
            Compact.lastOfFine(
                "groove g\n kick : x . . . | . . . . | . . . .\n shift kick " + by + "\n"))
        .isEqualTo(strokes);
  }

  @Test
  void barLinesAreSetByTheMetersInTurn() {
    String text = "groove g\n time 4/4 3/4\n kick : x x x x x x x\n";
    Diagnostic told = Compact.only(text, Severity.WARNING);
    assertThat(told.fixes().get(0).title()).isEqualTo("set the bar line");
    assertThat(Compact.fixed(text, told))
        .isEqualTo("groove g\n time 4/4 3/4\n kick : x x x x | x x x\n");
    assertThat(Compact.only(text.replace("x\n", "x x x\n"), Severity.WARNING).fixes())
        .extracting(Diagnostic.Fix::title)
        .as("nine beats are no bars of 4/4 and 3/4")
        .containsExactly("cut the surplus");
  }

  @Test
  void longBeatsAreExplainedInTheMetersOwnWords() {
    String text = "groove g\n time 5/4 in 3+2\n snare : r l r l r\n";
    Diagnostic told = Compact.only(text, Severity.WARNING);
    assertThat(told.help())
        .isEqualTo(
            "“in 3+2” makes 2 long beats of the bar; “grouped 3+2” leaves 5 beats and groups them");
    assertThat(Compact.lastOfFine(Compact.fixed(text, told)))
        .isEqualTo("0 R snare, 1/4 L snare, 1/2 R snare, 3/4 L snare, 1 R snare");
    Diagnostic more =
        Compact.only("groove g\n time 9/8 in 2+2+2+3\n snare : r l r\n", Severity.WARNING);
    assertThat(more.help())
        .as("there are more beats than the usual three, not fewer")
        .isEqualTo(
            "each word between spaces is one beat: write one more word, a dot for a silent beat");
  }
}
