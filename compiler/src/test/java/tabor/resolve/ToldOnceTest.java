package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Where something could not be read or placed, that is told; what later lines miss because of it is
 * not.
 */
class ToldOnceTest {
  /** A line that is told where nothing else is wrong. */
  private static final String MISSES = " accent ride\n";

  private static String text(String lines) {
    return lines.replace("// ", "\n").replace("/ ", "\n ") + "\n";
  }

  @Test
  void aStrokeThatIsNotThereIsTold() {
    assertThat(Compact.problems("groove a\n snare : x . . .\n" + MISSES))
        .containsExactly("3 nothing-there");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "groove a/ snare : x . . ./ take ride from none; 3 unknown-name",
        "groove a/ snare : x . . ./ fill none in bar 1; 3 unknown-name",
        "groove a/ snare : x . . ./ hands play none in eighths; 3 unknown-name",
        "groove a/ snare : x . .; 2 bar-length",
        "groove a/ snare : x . . ./ kick : x . . . | x . . .; 3 bar-count",
        "groove a/ snare : x . . ./ gong : x . . . | x . . .; 3 unknown-name",
        "groove a/ bars 600/ snare : x . . .; 2 too-long",
        "groove a/ snare : x . . ./ accent snare at 1foo; 3 syntax",
        "groove a/ snare : x . . ./ accent snare at 1 to 2foo; 3 syntax",
        "groove a/ snare : x . . ./ accent snare at every foo; 3 syntax",
        "groove a/ snare : x . ./ accent snare at 2.7; 2 bar-length",
        "groove a/ snare : % | x . . .; 2 nothing-there",
        "groove a/ ostinato snare : % | x . . .; 2 nothing-there",
        "groove a/ snare : x . . .// step b/ snare : x . . . | x . . .; 4 bar-count",
        "groove a/ snare : x . . .// step b/ snare : x . .; 4 bar-length",
        "groove a/ bars 3/ snare : x . . . | x . . . | x . . .// step b/"
            + " ostinato snare : x . . . | . . . .; 5 bar-count",
        "kit k/ surface gong letter g key 52// groove a/ on k/ right : g . . .// groove b/"
            + " kick : x . . ./ take all from a; 8 missing-surface",
      })
  void whatFollowsFromItIsNot(String lines, String told) {
    assertThat(Compact.problems(text(lines) + MISSES)).containsExactly(told);
  }

  /** A line that could not be read hides only what it may have brought. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "text no; accent ride; 4 nothing-there",
        "drop kick at 1 at 2; accent ride; 4 nothing-there",
        "dynamic loud; accent kick where ghosted; 4 nothing-there",
        "accent kick at 1 at 2; accent ride; 4 nothing-there",
        "accent kick at 1 at 2; drop kick where accented; ",
        "accent kick at 1 at 2; drop kick at 2 where plain; 4 nothing-there",
        "hihat : x{x . . .; drop kick at 2; 4 nothing-there",
        "hihat : x{x . . .; accent ride; ",
        "hihat : x{x . . .; accent all at 2; ",
        "hands play mine sixteenths; drop kick at 2; 4 nothing-there",
        "right hand : x{x . . .; drop feet at 2; 4 nothing-there",
        "right foot : x{x . . .; drop kick at 2; ",
        "right foot : x{x . . .; accent ride; 4 nothing-there",
        "ostinato kick : x{x . . .; drop kick at 2; ",
        "ostinato kick : x{x . . .; accent ride; 4 nothing-there",
        "line : x{x . . .; drop kick at 2; ",
        "line : x{x . . .; accent ride; ",
        "shift kick later by 1 day; drop kick at 2; ",
        "shift kick later by 1 day; accent ride; 4 nothing-there",
        "shift hands, kick later by 1 day; drop kick at 2; ",
        "add ride at 1 to 2; drop left foot; 4 nothing-there",
        "add ride at 1 to 2; accent ride; ",
        "take kick of a; accent ride; ",
        "ride : x . .; drop kick at 2; 4 nothing-there",
        "ride : x . .; accent ride at 2; ",
        "left : y . . .; drop kick at 2; 4 nothing-there",
        "hands play none in eighths; drop kick at 2; 4 nothing-there",
      })
  void whatHasNothingToDoWithItIs(String broken, String line, String told) {
    String text = "groove a\n kick : x . . .\n " + broken + "\n " + line + "\n";
    assertThat(Compact.problems(text))
        .hasSize(told == null ? 1 : 2)
        .first()
        .asString()
        .startsWith("3 ");
    if (told != null) {
      assertThat(Compact.problems(text)).endsWith(told);
    }
  }

  /** What follows a hand may be missing where a stroke of the hands may be. */
  @Test
  void whatFollowsMayBeMissingToo() {
    String hands = "groove a\n hihat : x{x . . .\n snare : . x . .\n";
    assertThat(Compact.problems(hands + " kick follows right at 1\n accent kick at 1\n"))
        .containsExactly("2 syntax");
    assertThat(Compact.problems(hands + " kick follows right\n accent kick at 1\n"))
        .containsExactly("2 syntax");
    assertThat(Compact.problems(hands + "step b\n add kick at 2\n accent kick at 1\n"))
        .containsExactly("2 syntax", "6 nothing-there");
    String feet = "groove a\n hihat.foot : x{x . . .\n snare : . x . .\n";
    assertThat(Compact.problems(feet + " kick follows left foot\n accent kick at 1\n"))
        .containsExactly("2 syntax");
    assertThat(Compact.problems(feet + " tom1 follows left hand\n accent tom1 at 1\n"))
        .containsExactly("2 syntax", "4 nothing-there", "5 nothing-there");
  }

  /** A part that could not be read is as long as it has to be. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "groove a/ bars 2/ kick : x . . ./ next/ kick : x{x . . .; 5 syntax",
        "groove a/ kick : x{x . . ./ next/ kick : x . . ./ bars 2; 2 syntax",
        "groove a/ kick : x{x . . ./ next/ ride : x{x . . ./ ostinato snare : x . . . | . . . .;"
            + " 2 syntax 4 syntax",
        "groove a/ bars 2/ kick : x . . ./ next/ kick : x{x . . ./ ride : x . . . | x . . .;"
            + " 5 syntax 6 bar-count",
        "groove a/ bars 3/ kick : x{x . . ./ ostinato ride : x . . . | x . . .;"
            + " 3 syntax 4 bar-count",
      })
  void lengths(String lines, String told) {
    assertThat(String.join(" ", Compact.problems(text(lines)))).isEqualTo(told);
  }

  /** A pickup that cannot be leaves open how long the first bar is. */
  @ParameterizedTest
  @CsvSource({"0", "4", "5"})
  void pickups(int beats) {
    assertThat(
            Compact.problems(
                "groove a\n pickup " + beats + " beats\n kick : x x x | x . . .\n gong : x\n"))
        .containsExactly("2 syntax", "4 unknown-name");
  }

  /** Lines of a chart are looked at one by one. */
  @Test
  void linesOfAChart() {
    assertThat(
            Compact.problems(
                "groove a\n kick : x . . .\nchart c\n play none\n play a without ride\n"
                    + " play a none without ride\n play a without snare\n"))
        .containsExactly("4 unknown-name", "5 nothing-there", "6 unknown-name", "7 nothing-there");
  }

  /** A chart does not miss what a section may have that could not be read. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "groove a/ snare : x . . .// chart c/ play a without ride; 4 nothing-there",
        "groove a/ snare : x . .// chart c/ play a without ride; 2 bar-length",
        "groove a/ time 4/4 of/ snare : x . . .// chart c/ play a without ride; 2 syntax",
        "groove a/ snare : x . . .// chart c/ play none without ride; 4 unknown-name",
      })
  void charts(String lines, String told) {
    assertThat(Compact.problems(text(lines))).containsExactly(told);
  }

  @Test
  void aBeatThatIsTooFineIsToldOnce() {
    String word = "x".repeat(1025);
    assertThat(Compact.problems("groove a\n snare : " + word + " . . .\n" + MISSES))
        .containsExactly("2 too-deep");
    assertThat(Compact.problems("groove a\n snare : {" + word + "} . . .\n" + MISSES))
        .containsExactly("2 too-deep");
  }

  /** A sheet is told what is wrong with it, its variations are not told it again. */
  @Test
  void aSheetWithALineThatCannotBeRead() {
    String groove = "groove a\n snare : x x x x\n";
    assertThat(
            Compact.problems(
                groove + "sheet s from a\n frobnicate\n each drop snare at 1 2\n accent ride\n"))
        .containsExactly("4 syntax");
    assertThat(
            Compact.problems(
                groove + "sheet s from a\n each drop snare at 5 of 1 2\n accent ride\n"))
        .containsExactly("4 syntax");
  }
}
