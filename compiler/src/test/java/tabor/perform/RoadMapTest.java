package tabor.perform;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Chart;
import tabor.resolve.Options;
import tabor.words.Language;
import tabor.words.Words;

/** The tempi that a road map shows. */
class RoadMapTest {
  private static List<String> tempi(String lines) {
    String text = "tempo 104\ngroove beat\n  snare : x x x x\nchart gig\n" + lines;
    Compiled compiled = new Compiler(Loader.NONE).compile(Path.of("a.tabor"), text, Options.NONE);
    assertThat(compiled.diagnostics()).isEmpty();
    Chart chart = (Chart) compiled.lesson().sections().get(1);
    return RoadMap.of(chart).stops().stream()
        .map(stop -> stop.tempo(Words.of(Language.EN)))
        .filter(tempo -> !tempo.isEmpty())
        .toList();
  }

  /** 104 less 28 in four bars of four beats is 1.75 a beat; the fifth bar is the first at 76. */
  @Test
  void aGradualTempoIsShownUpToWhereItLeads() {
    assertThat(tempi("  tempo 104 to 76 over 4 bars\n  play beat 4 bars\n  play beat 1 times\n"))
        .containsExactly("quarter = 104 to 76", "quarter = 76");
    assertThat(tempi("  tempo 104 to 76 over 4 bars\n  play beat 2 bars\n  play beat 3 bars\n"))
        .containsExactly("quarter = 104 to 90", "quarter = 90 to 76");
    // Beyond the last of its bars the tempo stays.
    assertThat(tempi("  tempo 104 to 120 over 2 bars\n  play beat 3 bars\n"))
        .containsExactly("quarter = 104 to 120");
  }
}
