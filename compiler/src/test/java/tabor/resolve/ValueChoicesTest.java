package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.groove.Groove;

/**
 * {@code each add … at every VALUE}: from the bar line on in steps of the value while they fit
 * (section 7 of the notation), one variation at each, also where beats are not divided so. The
 * places are counted by hand.
 */
class ValueChoicesTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "4/4; r . . .; quarter; 1, 2, 3, 4",
        "4/4; r . . .; half; 1, 3",
        "4/4; r . . .; triplet; 1, 1&/3, 1a/3, 2, 2&/3, 2a/3, 3, 3&/3, 3a/3, 4, 4&/3, 4a/3",
        // Six in a bar: at 1/6, 1/3, 2/3, 5/6 of it.
        "4/4; r . . .; quarter-triplet; 1, 1a/3, 2&/3, 3, 3a/3, 4&/3",
        "4/4 in 2; r .; quarter; 1, 1&/2, 2, 2&/2",
        "6/8; r . ; eighth; 1, 1&/3, 1a/3, 2, 2&/3, 2a/3",
        "6/8; r . ; quarter; 1, 1a/3, 2&/3",
        "6/8; r . ; half; 1",
        "6/8 in 6; r . . . . .; quarter; 1, 3, 5",
        "9/8; r . .; quarter; 1, 1a/3, 2&/3, 3",
        // Beats of three, two, two and two eighths.
        "9/8 in 3+2+2+2; r . . .; half; 1, 2&/2",
        "9/8 in 3+2+2+2; r . . .; quarter; 1, 1a/3, 2&/2, 3&/2",
        // Beats of three, four and four sixteenths: the second quarter is one sixteenth into beat
        // 2.
        "11/16 in 3+4+4; r . .; quarter; 1, 2e/4",
        "5/8; r . . . .; quarter; 1, 3",
        "7/8 in 2+2+3; r . .; quarter; 1, 2, 3",
        "3/4; r . .; half; 1",
      })
  void onePlaceAfterAnother(String time, String hands, String value, String counts) {
    String text = "groove g\n time " + time + "\n hands : " + hands + "\n";
    List<String> steps =
        Arrays.stream(counts.split(", ", -1))
            .map(at -> Compact.lastOfFine(text + "step t\n add kick at " + at + "\n"))
            .toList();
    assertThat(steps).as("each is another").doesNotHaveDuplicates();
    List<Groove> found =
        Compact.compile(text + "sheet s from g\n each add kick at every " + value + "\n")
            .lesson()
            .sheets()
            .get(0)
            .grooves();
    assertThat(found.stream().map(Compact::of)).containsExactlyElementsOf(steps);
  }
}
