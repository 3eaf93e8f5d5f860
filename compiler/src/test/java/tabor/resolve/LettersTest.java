package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;
import tabor.groove.Stroke;

/** What the letters of each kind of part mean, and what is said of those that mean nothing. */
class LettersTest {
  @ParameterizedTest
  @CsvSource(
      value = {
        "hands : r l b .| 0 R snare, 1/4 L snare, 1/2 R snare, 1/2 L snare",
        "feet : r l b .| 0 rf kick, 1/4 lf hihat.foot, 1/2 rf kick, 1/2 lf hihat.foot",
        "line : rl kp b .| 0 R snare, 1/8 L snare, 1/4 rf kick, 3/8 lf hihat.foot, 1/2 R snare,"
            + " 1/2 L snare",
        "right : s hd x .| 0 R snare, 1/4 R hihat, 3/8 R ride, 1/2 R snare",
        "left foot : p x . .| 0 lf hihat.foot, 1/4 lf hihat.foot",
        "tom1 : r l b .| 0 R tom1, 1/4 L tom1, 1/2 R tom1, 1/2 L tom1",
        "kick : r l b .| 0 rf kick, 1/4 lf kick, 1/2 rf kick, 1/2 lf kick",
        "snare : 'r ''l '''r .| 0 R snare+flam, 1/4 L snare+drag, 1/2 R snare+ruff",
        "ride : R (l) r! .| 0 R ride>, 1/4 L ride(), 1/2 R ride+choke",
        "hands : r// l/// r~ l^| 0 R snare+open-roll, 1/4 L snare+roll, 1/2 R snare+buzz,"
            + " 3/4 L snare+rimshot",
      },
      delimiter = '|')
  void lettersMean(String part, String strokes) {
    assertThat(Compact.last("groove g\n " + part + "\n")).isEqualTo(strokes);
  }

  @Test
  void theStrokesOfTheLineBelongToIt() {
    String line = "groove g\n line : rl kp b .\n hihat : . . . r\n";
    Groove groove = Compact.compile(line).lesson().grooves().get(0);
    assertThat(groove.strokes().stream().filter(s -> s.at().toString().equals("3/4")))
        .noneMatch(Stroke::inLine);
    assertThat(groove.strokes().stream().filter(Stroke::inLine)).hasSize(6);
  }

  @ParameterizedTest
  @CsvSource(
      value = {
        "hands : rk . . .| write r, l, b (both) or x (either) in the hands",
        "feet : rk . . .| write r, l, b (both) or x (either) in the feet",
        "line : rs . . .| in the line r and l are hands, k and p are feet, b is both hands",
        "snare : rs . . .| in the part of a surface the letters are limbs: r, l, b (both) or x"
            + " (either)",
        "snare : ro . . .| in the part of a surface the letters are limbs: r, l, b (both) or x"
            + " (either)",
        "hihat : ro . . .| the open hi-hat is written x=",
        "right foot : kq . . .| the kit “five-piece” knows k (kick), p (hi-hat with the"
            + " foot), and x for what the right foot plays",
      },
      delimiter = '|')
  void aLetterThatMeansNothingIsToldOnce(String part, String help) {
    Diagnostic told = Compact.only("groove g\n " + part + "\n");
    assertThat(told.code().word()).isEqualTo("unknown-letter");
    assertThat(told.help()).isEqualTo(help);
    assertThat(told.place().words()).contains("g").contains("1");
    assertThat(told.message())
        .isEqualTo(
            "“"
                + part.charAt(part.indexOf(" : ") + 4)
                + "” is no letter of the part “"
                + part.substring(0, part.indexOf(" : "))
                + "”");
    // A pattern's letters are read at every place that they come to.
    assertThat(
            Compact.problems(
                "groove g\n bars 2\n " + part.replaceFirst(" \\. \\. \\.", " . . . | %") + "\n"))
        .containsExactly("3 unknown-letter");
  }

  @Test
  void aWordAmongBeatsIsToldOnceAsAWord() {
    String two = "groove g\n hihat : xx xx xx xx |";
    Diagnostic again = told(two + " repeat\n");
    assertThat(again.message()).isEqualTo("“repeat” is no beat of the part “hihat”");
    assertThat(again.help()).isEqualTo("a bar that is the same as the one before it is written %");
    assertThat(again.fixes()).hasSize(1);
    assertThat(again.fixes().get(0).edits().get(0).text()).isEqualTo("%");
    assertThat(told(two + " Same  # as before\n").fixes()).hasSize(1);
    // Among other beats nobody knows what it is to repeat.
    assertThat(told(two + " repeat x x x\n").fixes()).isEmpty();
    assertThat(told("groove g\n hihat : repeat\n").fixes()).isEmpty();
    Diagnostic other = told("groove g\n line : rlkp zest . .\n");
    assertThat(other.message()).isEqualTo("“zest” is no beat of the part “line”");
    assertThat(other.help()).startsWith("in the line r and l are hands");
    // Two letters that are none may be a slip; so may letters of a kit.
    assertThat(told("groove g\n snare : xezx . . .\n").message()).startsWith("“e” is no letter");
    assertThat(told("groove g\n right : zest . . .\n").message()).startsWith("“z” is no letter");
    String endless = "zest".repeat(6);
    assertThat(told("groove g\n snare : " + endless + " . . .\n").message())
        .startsWith("“z” is no letter");
  }

  /** The first that is said of a letter. */
  private static Diagnostic told(String text) {
    List<Diagnostic> letters =
        Compact.compile(text).diagnostics().stream()
            .filter(d -> d.code().word().equals("unknown-letter"))
            .toList();
    if (!letters.get(0).message().contains("is no letter")) {
      assertThat(letters).hasSize(1);
    }
    return letters.get(0);
  }

  @Test
  void theHandsOfAKitAreNamedByLetter() {
    assertThat(Compact.only("groove g\n right : q . . .\n").help())
        .startsWith("the kit “five-piece” knows b (ride bell), c (crash), ")
        .contains(" s (snare),", " f (floor tom),")
        .doesNotContain("kick")
        .endsWith(" and x for what the right hand plays");
  }

  @Test
  void handsPlayNoPedals() {
    Diagnostic told = Compact.only("groove g\n right : . k . .\n");
    assertThat(told.code().word()).isEqualTo("wrong-limb");
    assertThat(told.place().bar()).isEqualTo(1);
    assertThat(told.place().count()).isEqualTo("2");
    assertThat(Compact.problems("groove g\n right foot : s . . .\n"))
        .containsExactly("2 wrong-limb");
    assertThat(Compact.problems("groove g\n right : k . . . | %\n")).hasSize(1);
  }

  @ParameterizedTest
  @CsvSource({
    "snare : . r= . .; missing-surface; 2",
    "floor : . . r! .; missing-surface; 3",
    "ride : . . . r^; missing-surface; 4",
  })
  void signsThatASurfaceCannotTakeAreToldOnce(String all) {
    String[] parts = all.split("; ", -1);
    Diagnostic told = Compact.only("groove g\n " + parts[0] + " | %\n");
    assertThat(told.code().word()).isEqualTo(parts[1]);
    assertThat(told.place().count()).isEqualTo(parts[2]);
    assertThat(told.place().bar()).isEqualTo(1);
  }

  @ParameterizedTest
  @CsvSource(
      value = {
        // What does not ring on after a stroke: the drums; who plays it is looked up for each part.
        "snare : r - . .| 2 held-drum",
        "ride : r - . .| ''",
        "right : s - . .| 2 held-drum",
        "right : d - . .| ''",
        "right : x - . .| 2 held-drum",
        "hands : l - . .| 2 held-drum",
        "feet : r - . .| 2 held-drum",
        "feet : l - . .| ''",
        "line : k - . .| 2 held-drum",
        "line : p - . .| ''",
        "line : r - . .| 2 held-drum",
        "line : l - . .| 2 held-drum",
        "snare : r// - . .| ''",
        "snare : r~ - . .| ''",
        "snare : r~ -. - .| ''",
        "snare : r~ - - .| 2 held-drum",
        "snare : r~ - {-.} .| 2 held-drum",
        "snare : b~ - - -| ''",
      },
      delimiter = '|')
  void heldDrumsAreHintedAt(String part, String hints) {
    assertThat(String.join(" ", Compact.hints("groove g\n " + part + "\n"))).isEqualTo(hints);
  }

  @Test
  void whatTheHandPlaysIsHeldWhereItRings() {
    assertThat(Compact.hints("groove g\n right plays ride\n hands : r - . .\n")).isEmpty();
    assertThat(Compact.hints("groove g\n left plays ride\n hands : r - . .\n"))
        .containsExactly("3 held-drum");
    assertThat(Compact.hints("groove g\n left plays ride\n hands : l - . .\n")).isEmpty();
    assertThat(Compact.hints("groove g\n right plays ride\n right : x - . .\n")).isEmpty();
  }
}
