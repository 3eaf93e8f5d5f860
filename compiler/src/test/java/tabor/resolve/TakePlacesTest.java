package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** {@code take} with places and levels, bar by bar: section 6 of the notation. */
class TakePlacesTest {
  private static final String TWO =
      "groove a\n snare : R . r . | . r . R\n" + "groove b\n snare : . r . r | r . . .\nstep s\n ";

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "take snare from a; 0 R snare>, 1/2 R snare | 1/4 R snare, 3/4 R snare>",
        "take snare from a where accented;"
            + " 0 R snare>, 1/4 R snare, 3/4 R snare | 0 R snare, 3/4 R snare>",
        "take snare from a where plain; 1/2 R snare | 1/4 R snare",
        "take snare from a at 1; 0 R snare>, 1/4 R snare, 3/4 R snare |",
        "take snare from a at 1 where accented; 0 R snare>, 1/4 R snare, 3/4 R snare | 0 R snare",
        "take snare from a at 1 2; 0 R snare>, 3/4 R snare | 1/4 R snare",
        "take snare from a at 2 in bar 2; 1/4 R snare, 3/4 R snare | 0 R snare, 1/4 R snare",
        "take snare from a in bar 1; 0 R snare>, 1/2 R snare | 0 R snare",
        "take snare from a at 3 to 4; 1/4 R snare, 1/2 R snare | 0 R snare, 3/4 R snare>",
        "take snare from a at every beat in bar 2;"
            + " 1/4 R snare, 3/4 R snare | 1/4 R snare, 3/4 R snare>",
      })
  void whatComesAndWhatGoes(String line, String strokes) {
    assertThat(Compact.lastOfFine(TWO + line + "\n")).isEqualTo(strokes.replaceFirst(" \\|$", ""));
  }

  @ParameterizedTest
  @CsvSource({
    "take snare from a where ghosted, nothing-there",
    "take snare from a at 3 where ghosted, nothing-there",
    "take snare from a at 1&, nothing-there",
    "take snare from a at 5, count-outside-bar",
    "take kick from a at 1, nothing-there",
  })
  void whatNeitherHasIsToldAndChangesNothing(String line, String code) {
    assertThat(Compact.problems(TWO + line + "\n")).containsExactly("6 " + code);
    assertThat(Compact.last(TWO + line + "\n")).isEqualTo("1/4 R snare, 3/4 R snare | 0 R snare");
  }

  /** A place that one of the bars lacks is passed over; one that all lack is told. */
  @Test
  void barsOfSeveralMeters() {
    String text =
        "groove a\n time 4/4 3/4\n snare : . . . r | . . .\n"
            + "groove b\n time 4/4 3/4\n snare : r . . . | r . .\nstep s\n take snare from a at ";
    assertThat(Compact.lastOfFine(text + "4\n")).isEqualTo("0 R snare, 3/4 R snare | 0 R snare");
    assertThat(Compact.problems(text + "5\n")).containsExactly("8 count-outside-bar");
  }

  @Test
  void anUnclearPlaceIsToldOnce() {
    String text =
        "groove a\n hands : rlr . . . | rlr . . .\n hands : ...r . . . | ...r . . .\n"
            + "groove b\n hands : r . . . | r . . .\nstep s\n take hands from a at 1a\n";
    assertThat(Compact.problems(text)).containsExactly("7 ambiguous-count");
    assertThat(Compact.last(text)).isEqualTo("0 R snare | 0 R snare");
  }

  /** A pickup has the last beats of its bar, as many as it says. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "3 beats; x x x; 2; 1/4 rf kick |",
        "3 beats; x x x; 3; 1/2 rf kick |",
        "2 beats; x x; 3; 1/2 rf kick |",
        "1 beat; x; 4; 3/4 rf kick |",
        "3 beats; x x x; 1; count-outside-bar",
        "2 beats; x x; 2; count-outside-bar",
        "1 beat; x; 3; count-outside-bar",
      })
  void fromAPickup(String length, String kick, String count, String expected) {
    String text =
        "groove a\n pickup "
            + length
            + "\n kick : "
            + kick
            + " | . . . .\ngroove b\n pickup "
            + length
            + "\n tom1 : "
            + kick.replace('x', '.')
            + " | . . . .\nstep s\n take kick from a at "
            + count
            + " in bar 0\n";
    if (expected.startsWith("count")) {
      assertThat(Compact.problems(text)).containsExactly("8 " + expected);
    } else {
      assertThat(Compact.lastOfFine(text)).isEqualTo(expected.replaceFirst(" \\|$", ""));
    }
  }
}
