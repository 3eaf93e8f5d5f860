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
        "groove a/ snare : x . . ./ accent snare every foo; 3 syntax",
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
