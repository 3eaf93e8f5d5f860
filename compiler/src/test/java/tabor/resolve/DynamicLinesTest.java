package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;

/** Where dynamics and hairpins stand. */
class DynamicLinesTest {
  private static final String TWO = "groove g\n kick : xx x x x | x x x xx\n";

  private static String marks(String lines) {
    Compiled compiled = Compact.compile(TWO + lines);
    assertThat(compiled.diagnostics()).as(lines).isEmpty();
    List<Groove> all = compiled.lesson().grooves();
    Groove last = all.get(all.size() - 1);
    return last.marks().stream()
            .map(mark -> mark.loudness().word() + " " + mark.bar() + ":" + mark.at())
            .collect(Collectors.joining(", "))
        + last.hairpins().stream()
            .map(
                pin ->
                    (pin.grows() ? "< " : "> ")
                        + (pin.fromBar() + ":" + pin.from() + " " + pin.toBar() + ":" + pin.to())
                        + (" " + pin.target().word()))
            .collect(Collectors.joining(", "));
  }

  private static Diagnostic only(String lines) {
    return Compact.only(TWO + lines);
  }

  @ParameterizedTest
  @CsvSource(
      value = {
        "dynamic p| p 1:0",
        "dynamic ff at 1&| ff 1:1/8",
        "dynamic mf in bar 2| mf 2:0",
        "dynamic mp at 3 in bar 2| mp 2:1/2",
        "dynamic pp in bar 2 at 4&| pp 2:7/8",
        "crescendo to f from 1 to 3| < 1:0 1:1/2 f",
        "diminuendo to p from 2 to 4| > 1:1/4 1:3/4 p",
        "crescendo to ff from 3 in bar 1 to 1 in bar 2| < 1:1/2 2:0 ff",
        "crescendo to ff from 2 in bar 2 to 4&| < 2:1/4 2:7/8 ff",
        "crescendo to ff from 1 to 1&| < 1:0 1:1/8 ff",
      },
      delimiter = '|')
  void itStandsWhereItSays(String line, String expected) {
    assertThat(marks(" " + line + "\n")).isEqualTo(expected);
  }

  @Test
  void laterOnesStandBesideThoseBefore() {
    assertThat(marks(" dynamic p\n dynamic f in bar 2\n dynamic ff at 3\n"))
        .isEqualTo("p 1:0, ff 1:1/2, f 2:0");
    assertThat(marks(" crescendo to f from 1 to 2\n diminuendo to p from 3 to 4\n"))
        .isEqualTo("< 1:0 1:1/4 f, > 1:1/2 1:3/4 p");
  }

  @Test
  void atOnePlaceTheLastCounts() {
    assertThat(marks(" dynamic p at 3\n dynamic f at 3\n dynamic mp at 3 in bar 2\n"))
        .isEqualTo("f 1:1/2, mp 2:1/2");
    assertThat(marks(" dynamic p\nstep s\n dynamic f\n")).isEqualTo("f 1:0");
    assertThat(marks(" dynamic p\nstep s\n dynamic f at 2\n")).isEqualTo("p 1:0, f 1:1/4");
  }

  @Test
  void aPickupIsBarNought() {
    Compiled compiled =
        Compact.compile("groove g\n pickup 1 beat\n kick : x | x . . .\n dynamic p in bar 0\n");
    assertThat(compiled.diagnostics()).isEmpty();
    var mark = compiled.lesson().grooves().get(0).marks().get(0);
    assertThat(mark.bar() + ":" + mark.at())
        .as("its first beat is the bar's last")
        .isEqualTo("0:3/4");
  }

  @Test
  void aBarOrABeatThatIsNotThereIsTold() {
    Diagnostic bar = only(" dynamic p in bar 3\n");
    assertThat(bar.message()).isEqualTo("“g” has only 2 bars");
    assertThat(bar.help()).isEqualTo("name a bar from 1 to 2");
    assertThat(only(" crescendo to f from 1 in bar 3 to 2 in bar 3\n").message())
        .isEqualTo("“g” has only 2 bars");
    assertThat(only(" crescendo to f from 1 to 2 in bar 3\n").message())
        .isEqualTo("“g” has only 2 bars");
    Diagnostic beat = only(" dynamic p at 5\n");
    assertThat(beat.code().word()).isEqualTo("count-outside-bar");
    assertThat(beat.message()).isEqualTo("there is no beat 5 in 4/4: the beats are 1 to 4");
    assertThat(beat.help()).isEqualTo("name a place that the bar has, such as 1&");
    assertThat(only(" crescendo to f from 5 to 6\n").message()).contains("no beat 5");
    assertThat(only(" crescendo to f from 1 to 6\n").message()).contains("no beat 6");
  }

  @Test
  void aHairpinEndsAfterItBegins() {
    for (String line :
        List.of(
            "crescendo to f from 2 to 2",
            "crescendo to f from 2 to 1&",
            "diminuendo to f from 1 in bar 2 to 4 in bar 1")) {
      Diagnostic told = only(" " + line + "\n");
      assertThat(told.message()).isEqualTo("this ends before it begins");
    }
    assertThat(only(" crescendo to f from 2 to 1\n").help())
        .isEqualTo("name the bar of its end: to 1 in bar 2");
  }

  @Test
  void aWrongOneLeavesTheOthers() {
    String wrong =
        " dynamic p\n dynamic f at 5\n dynamic f in bar 3\n crescendo to f from 2 to 1\n";
    Groove groove = Compact.compile(TWO + wrong).lesson().grooves().get(0);
    assertThat(groove.marks()).hasSize(1);
    assertThat(groove.hairpins()).isEmpty();
  }
}
