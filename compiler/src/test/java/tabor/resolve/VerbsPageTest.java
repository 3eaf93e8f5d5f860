package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tabor.syntax.Verb;
import tabor.testing.PageTables;
import tabor.testing.PageTables.Row;

/**
 * What each verb makes of strokes, as docs/notation.md shows it to drummers. Written by hand;
 * nothing in the table comes from the program.
 */
class VerbsPageTest {
  private static List<Row> examples() {
    return PageTables.of("notation.md").with("there was");
  }

  private static String verb(Row row) {
    return row.first().split(" ", 2)[0];
  }

  @Test
  void thePageShowsEveryVerb() {
    assertThat(examples().stream().map(VerbsPageTest::verb))
        .containsExactlyInAnyOrderElementsOf(Arrays.stream(Verb.values()).map(Verb::word).toList());
  }

  @ParameterizedTest
  @MethodSource("examples")
  void makesWhatThePageShows(Row row) {
    String before = bar(row.cell("there was"));
    String after = Compact.lastOfFine(bar(row.cell("there is")));
    assertThat(Compact.lastOfFine(before + "step s\n  " + row.first() + "\n")).isEqualTo(after);
    assertThat(Compact.last(before)).isNotEqualTo(after);
  }

  /** A groove with one bar as long as its part. */
  private static String bar(String part) {
    int beats = part.split(":", 2)[1].strip().split(" ", -1).length;
    return "time " + beats + "/4\ntempo 60\ngroove g\n  " + part + "\n";
  }
}
