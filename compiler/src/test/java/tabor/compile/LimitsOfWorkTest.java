package tabor.compile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;
import tabor.resolve.Options;

/** Short texts that ask for a lot are told so, at the line that asks for too much. */
class LimitsOfWorkTest {
  private static List<Diagnostic> problems(String text) {
    Compiled compiled = new Compiler(Loader.NONE).compile(Path.of("big.tabor"), text, Options.NONE);
    long strokes =
        compiled.lesson().grooves().stream().map(Groove::written).mapToLong(List::size).sum();
    assertThat(strokes).isLessThan(250_000);
    return compiled.diagnostics();
  }

  private static void tooLongAt(String text, String at) {
    assertThat(
            problems(text).stream()
                .filter(d -> d.code() == Code.TOO_LONG)
                .map(d -> d.spot().text()))
        .contains(at);
  }

  @Test
  void aSectionOfTooManyStrokes() {
    String lane = "ostinato snare : " + "r".repeat(900) + " . . .";
    tooLongAt("groove g\n bars 512\n " + lane + "\n", lane);
  }

  @Test
  void sectionsOfTooManyStrokesTogether() {
    String big = "groove g\n bars 512\n ostinato snare : rlrl rlrl rlrl rlrl\n";
    String steps = "step \"more\"\n accent snare at 1\n".repeat(60);
    assertThat(problems(big + steps).stream().filter(d -> d.code() == Code.TOO_LONG)).hasSize(1);
  }

  /** A step that changes nothing is printed and drawn like any other. */
  @Test
  void stepsThatChangeNothingCount() {
    String big = "groove g\n bars 512\n ostinato snare : rlrl rlrl rlrl rlrl\n";
    String steps = "step \"more\"\n text \"t\"\n".repeat(10);
    assertThat(problems(big + steps).stream().filter(d -> d.code() == Code.TOO_LONG)).hasSize(1);
  }

  /** What is written out may be long: a text may hold more strokes the longer it is. */
  @Test
  void aLongTextMayHoldMore() {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < 4_000; i++) {
      text.append("groove g").append(i).append("\n hands : rlrl rlrl rlrl rlrl\n");
    }
    assertThat(problems(text.toString())).isEmpty();
  }

  @Test
  void chartsThatSoundTooMuchTogether() {
    String groove = "groove g\n snare : rlrl rlrl rlrl rlrl\n";
    tooLongAt(groove + "chart c\n play g 50000 times\n", "play g 50000 times");
    tooLongAt(groove + "chart c\n play g 6000 times\nchart d\n play g 6000 times\n", "chart d");
  }

  @Test
  void tooManyChangesOfTooManyStrokes() {
    String text =
        "groove g\n bars 512\n ostinato hihat : rrrr rrrr rrrr rrrr\n"
            + " shift hihat later by 1 sixteenth\n".repeat(1700);
    tooLongAt(text, "shift hihat later by 1 sixteenth");
  }

  @Test
  void aLineThatNobodyWrites() {
    String lane = "hands : " + "rl ".repeat(30_000);
    tooLongAt("groove g\n  " + lane + "\n  kick : x . x .\n", lane.strip());
    String text = "text \"\"\"" + "word\n".repeat(14_000) + "\"\"\"";
    tooLongAt("groove g\n  kick : x . x .\n  " + text + "\n", text);
    assertThat(problems("groove g\n  kick : x . x .\n  text \"" + "x".repeat(65_000) + "\"\n"))
        .isEmpty();
  }

  /** Each line after the limit costs no more than one before it. */
  @Test
  void systemsBeyondTheLimitAreNotWalked() {
    String systems = "  kick : x . x .\n  next\n".repeat(60_000);
    assertThat(problems("groove g\n" + systems + "  kick : x . x .\n"))
        .extracting(Diagnostic::code)
        .containsOnlyOnce(Code.TOO_LONG);
  }

  @Test
  void aLongChainOfKits() {
    StringBuilder text = new StringBuilder("kit k0 like five-piece\n");
    for (int i = 1; i < 3_000; i++) {
      text.append("kit k").append(i).append(" like k").append(i - 1).append('\n');
    }
    text.append("groove g\n on k2999\n kick : x . . .\n");
    assertThat(problems(text.toString())).isEmpty();
  }
}
