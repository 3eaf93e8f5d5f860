package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.diagnostic.Diagnostic;
import tabor.source.Span;

/** Names and letters as they stand on paper, read well but called otherwise here. */
class SaidNamesTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "rh : x . . .; right : x . . .",
        "lh : x . . .; left : x . . .",
        "rf : x . . .; right foot : x . . .",
        "lf : x . . .; left foot : x . . .",
        "sticking : rlrl . . .; hands : rlrl . . .",
        "kick : o . . .; kick : x . . .",
      })
  void partsAreCalledByTheirLimbs(String said, String written) {
    String text = "groove g\n  " + said + "\n";
    Diagnostic told = Compact.only(text);
    String fixed = Compact.fixed(text, told);
    assertThat(fixed).isEqualTo("groove g\n  " + written + "\n");
    assertThat(Compact.problems(fixed)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"then", "and"})
  void sectionsOfAChartFollowWithoutAWord(String word) {
    String text = "groove g\n kick : x . . .\nchart c\n play g " + word + " g\n";
    Diagnostic told = Compact.only(text);
    assertThat(told.help()).isEqualTo("sections follow one another without a word between them");
    Diagnostic.Edit edit = told.fixes().get(0).edits().get(0);
    String chart = edit.spot().passage().text();
    Span span = edit.spot().span();
    assertThat(chart.substring(0, span.start()) + edit.text() + chart.substring(span.end()))
        .endsWith(" play g g\n");
  }

  @Test
  void theKitToPlayOnIsNotOpenedAsOneOfOnesOwn() {
    Diagnostic told = Compact.only("kit junior\ngroove g\n kick : x . . .\n");
    assertThat(told.message()).isEqualTo("there is a kit “junior” already");
    assertThat(told.help())
        .isEqualTo("to play on it write on junior; one of your own has another name");
  }
}
