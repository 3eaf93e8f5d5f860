package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.diagnostic.Diagnostic;

/**
 * Where a word that a class counts with is told to be one of the usual syllables, and where not.
 */
class OneWordTwoReadingsTest {
  /** Triplets are counted 1 e a; bar 1 has sixteenths, the last beat of bar 2 a triplet. */
  private static final String TURNS =
      "say threes e a\n"
          + "groove g\n"
          + " hihat : xxxx xxxx xxxx xxxx | xxxx xxxx xxxx xxx:1\n"
          + " snare : .x.. . . . | . . . .\n"
          + "step s\n ";

  @ParameterizedTest
  @CsvSource({
    "add kick at 4e in bar 1, ''",
    "add kick at 4e in bar 2, 6 counting-word",
    "add kick at 4e in every 2nd bar, 6 counting-word",
    "add kick at 4e, 6 counting-word",
    "add kick at every e, 6 counting-word",
    "add kick at every e in bar 1, ''",
    "add kick at every &, ''",
  })
  void itIsToldOfTheBarsAndBeatsThatAreMeant(String line, String told) {
    assertThat(String.join(", ", Compact.problems(TURNS + line + "\n"))).isEqualTo(told);
  }

  @Test
  void theBeatThatCanBeReadSoIsNamed() {
    Diagnostic told = Compact.only(TURNS + "add kick at every e\n");
    assertThat(told.message())
        .isEqualTo(
            "every e is read as 4e/4 and its like here, not as 4&/3, though the lesson is counted"
                + " so");
    assertThat(told.help())
        .isEqualTo("write out the counts with their division, such as 4e/4 or 4&/3");
  }

  @ParameterizedTest
  @CsvSource(
      value = {
        "accent snare at 1e| ''",
        "accent hihat, snare at 1e| 6 counting-word",
        "accent all at 1e| 6 counting-word",
        "drop snare, hihat at 1e| 6 counting-word",
        "move snare from 1e to 3| ''",
        "move snare, hihat from 1e to 3| 6 counting-word",
      },
      delimiter = '|')
  void itIsToldWhereTheTargetHasAStrokeAtBoth(String line, String told) {
    String text =
        "say threes e a\ngroove g\n hihat : xxx . . .\n snare : .x.. . . .\nstep s\n "
            + line
            + "\n";
    assertThat(String.join(", ", Compact.problems(text))).isEqualTo(told);
  }
}
