package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.diagnostic.Diagnostic;

/** How much one section may hold: 40000 strokes; what is more is told once, with a way out. */
class SectionLimitsTest {
  /** Twenty strokes in a beat, four beats in a bar. */
  private static String bars(int bars, String lines) {
    String beat = "r".repeat(20) + " ";
    return "tempo 10\ngroove g\n bars "
        + bars
        + "\n ostinato hands : "
        + beat.repeat(4)
        + "\n"
        + lines;
  }

  /** What is told of the section; a file of many strokes may have a limit besides. */
  private static List<Diagnostic> told(String text) {
    return Compact.compile(text).diagnostics().stream()
        .filter(one -> !one.message().startsWith("the sections so far"))
        .toList();
  }

  @ParameterizedTest
  @CsvSource({
    "501, '', 4",
    // One stroke more in each bar.
    "493, add kick at 1, ''",
    "494, add kick at 1, 5",
    "250, double hands, ''",
    "251, double hands, 5",
    "167, triple hands, 5",
  })
  void fortyThousandStrokes(int bars, String line, String at) {
    String text = bars(bars, line.isEmpty() ? "" : " " + line + "\n");
    // A file of so many strokes has a limit besides, told at its section.
    List<String> all =
        Compact.problems(text).stream().filter(one -> !one.equals("2 too-long")).toList();
    assertThat(all).isEqualTo(at.isEmpty() ? List.of() : List.of(at + " too-long"));
  }

  @Test
  void itIsToldOnce() {
    List<Diagnostic> told =
        told(bars(500, " add kick at 1\n add kick at 2\n add tom1 with left at 3\n"));
    assertThat(told)
        .extracting(Diagnostic::message)
        .containsExactly("here the section grows beyond 40000 strokes");
    assertThat(told.get(0).help())
        .isEqualTo("make two sections of it, and play them one after another in a chart");
  }

  /** Each line looks at every stroke; after half a million looks the rest is left. */
  @Test
  void soManyChangesOfSoManyStrokes() {
    String some = " accent hands at 1\n plain hands at 1\n".repeat(5);
    assertThat(told(bars(500, some))).isEmpty();
    List<Diagnostic> many = told(bars(500, some.repeat(4)));
    assertThat(many)
        .extracting(Diagnostic::message)
        .containsExactly("from here on the section has too many changes of too many strokes");
    assertThat(many.get(0).help()).isEqualTo("make two sections of it, or write the parts out");
  }
}
