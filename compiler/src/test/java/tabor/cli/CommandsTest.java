package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tabor.diagnostic.Code;

class CommandsTest {
  private static final String FINE = "groove a\n  hands : rl rl rl rl\n";
  private static final String WRONG = "groove a\n  hands : rl rl rl\n";

  @Test
  void exitCodes() {
    assertThat(Ran.reading(FINE, "check", "-").code()).isEqualTo(0);
    assertThat(Ran.reading(WRONG, "check", "-").code()).isEqualTo(1);
    assertThat(Ran.of("check").code()).isEqualTo(2);
    assertThat(Ran.of("chekc", "-").code()).isEqualTo(2);
    assertThat(Ran.of("check", "--report", "xml", "-").code()).isEqualTo(2);
    assertThat(Ran.of("check", "--tempo", "quick", "-").code()).isEqualTo(2);
    assertThat(Ran.of().code()).isEqualTo(2);
    assertThat(Ran.of("--version")).isEqualTo(new Ran(0, "Tabor 0.1.0\n", ""));
  }

  @Test
  void warningsAloneAreFine() {
    Ran ran = Ran.reading("groove a\n  hands : RL RL RL RL\n", "check", "-");
    assertThat(ran.code()).isEqualTo(0);
    assertThat(ran.out()).contains("warning:").contains("[all-accents]");
  }

  @Test
  void hintsOnlyOnRequest() {
    String odd = "groove a\n  hands : rl rlrlr rl r\n";
    assertThat(Ran.reading(odd, "check", "-").out()).doesNotContain("odd-beat");
    assertThat(Ran.reading(odd, "check", "--hints", "-").out()).contains("[odd-beat]");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "check",
        "build",
        "grid",
        "list",
        "play",
        "find",
        "overview",
        "explain",
        "completion"
      })
  void everyCommandHelps(String command) {
    Ran ran = Ran.of(command, "--help");
    assertThat(ran.code()).isEqualTo(0);
    assertThat(ran.out()).startsWith("Usage: tabor " + command);
    assertThat(ran.err()).isEmpty();
    assertThat(Ran.of("--help").out()).contains("\n  " + command);
  }

  @Test
  void everyCommandIsListedWithAWholeSentence() {
    String help = Ran.of("--help").out();
    String list = help.substring(help.indexOf("Commands:\n"), help.indexOf("\n\ntabor COMMAND"));
    assertThat(list.replaceAll("\n {6,}", " ").lines().skip(1))
        .hasSizeGreaterThan(15)
        .allMatch(line -> line.endsWith("."));
  }

  @Test
  void completionKnowsCommandsAndOptions() {
    Ran ran = Ran.of("completion");
    assertThat(ran.code()).isEqualTo(0);
    assertThat(ran.out()).contains("complete -F").contains("--left-handed").contains("explain");
  }

  @Test
  void explainListsEveryCode() {
    Ran ran = Ran.of("explain");
    for (Code code : Code.values()) {
      assertThat(ran.out()).contains("\n  " + code.word() + " ");
    }
    assertThat(Ran.of("explain", "bar-lenght").code()).isEqualTo(2);
  }

  @Test
  void colourOnATerminalOnlyAndNeverWithNoColor() {
    byte[] in = WRONG.getBytes(java.nio.charset.StandardCharsets.UTF_8);
    String escape = "\u001b[";
    assertThat(Ran.on(in, Map.of(), true, "check", "-").out()).contains(escape);
    assertThat(Ran.on(in, Map.of(), false, "check", "-").out()).doesNotContain(escape);
    assertThat(Ran.on(in, Map.of("NO_COLOR", "1"), true, "check", "-").out())
        .doesNotContain(escape);
    assertThat(Ran.on(in, Map.of("TERM", "dumb"), true, "check", "-").out()).doesNotContain(escape);
    assertThat(Ran.on(in, Map.of("NO_COLOR", ""), true, "check", "-").out()).contains(escape);
    assertThat(Ran.on(in, Map.of("NO_COLOR", "1"), true, "--help").out()).doesNotContain(escape);
  }

  @Test
  void plainCheckSaysWhatTheParsedOneSays() {
    Ran plain = Ran.reading(WRONG, "check", "-");
    Ran parsed = Ran.reading(WRONG, "check", "--report", "text", "-");
    assertThat(plain).isEqualTo(parsed);
  }

  @Test
  void gridOfOneSection() {
    String two = FINE + "step up \"Up\"\n  add kick at 1\n";
    Ran ran = Ran.reading(two, "grid", "-", "up");
    assertThat(ran.code()).isEqualTo(0);
    assertThat(ran.out()).contains("2. Up (up)\n   kick: added on 1\n").doesNotContain("1. a");
    assertThat(Ran.reading(two, "grid", "-", "upp").code()).isEqualTo(2);
    assertThat(Ran.reading(WRONG, "grid", "-"))
        .matches(failed -> failed.code() == 1 && failed.out().isEmpty());
  }
}
