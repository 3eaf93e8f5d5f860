package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.groove.Groove;
import tabor.groove.Sheet;

/** Which places {@code each} finds in other meters, and how many choices a sheet has room for. */
class ChoicesOfPlacesTest {
  private static Sheet sheet(String base, String line) {
    Compiled compiled = Compact.compile(base + "sheet s from a\n each " + line + "\n");
    assertThat(compiled.diagnostics()).as(line).noneMatch(d -> d.severity().ordinal() == 0);
    return compiled.lesson().sheets().get(0);
  }

  /** The variations are the steps that have the line with one place, in this order. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "time 6/8/ hihat : xxx xxx; add kick at every quarter; 1,1a,2&",
        "time 6/8/ hihat : xxx xxx; add kick at every eighth; 1,1&,1a,2,2&,2a",
        "time 6/8/ hihat : x x; add kick at every eighth; 1,1&,1a,2,2&,2a",
        "hihat : x x x x; add kick at every eighth; 1,1&,2,2&,3,3&,4,4&",
        "hihat : xxx xxx x x; add kick at every half; 1,3",
        "hihat : xxx xxxx xx x; add kick at every &; 1&,2&,3&,4&",
        "hihat : xxx xxxx xx x; add kick at every a; 1a,2a,3a,4a",
        "hihat : xxx xxxx xx x; accent hihat at every a; 1a,2a",
        "hihat : xxx xxxx xx x; accent hihat at 1a to 3; 1a,2,2e,2&,2a,3",
        "time 4/4 3/4 2/4/ hihat : x x x x | x x x | x x; add kick at every & in bar 2;"
            + " 1& in bar 2,2& in bar 2,3& in bar 2",
        "time 4/4 6/8 2/4/ hihat : x x x x | xxx xxx | x x; accent hihat at every a in bar 2;"
            + " 1a in bar 2,2a in bar 2",
      })
  void places(String lines, String each, String counts) {
    String base = "groove a\n " + lines.replace("/ ", "\n ") + "\n";
    String verb = each.substring(0, each.indexOf(" at "));
    List<String> steps =
        Arrays.stream(counts.split(",", -1))
            .map(at -> Compact.last(base + "step t from a\n " + verb + " at " + at + "\n"))
            .toList();
    assertThat(sheet(base, each).grooves().stream().map(Compact::of).collect(Collectors.toList()))
        .isEqualTo(steps);
  }

  /** Leaving out one of 36 makes as many choices as taking one. */
  @Test
  void manyOfManyPlaces() {
    String base = "groove a\n time 9/4\n hihat :" + " xxxx".repeat(9) + "\n";
    Sheet sheet = sheet(base, "accent hihat at 35 of every sixteenth");
    assertThat(sheet.grooves()).hasSize(36);
    assertThat(sheet.grooves().stream().map(Groove::strokes))
        .allMatch(
            strokes ->
                strokes.stream().filter(s -> s.level().name().equals("ACCENT")).count() == 35);
  }

  /** Each bar is a variation, so what a bar may not begin with is told of each. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "kick : - x . .; each bar is a variation of its own, so no stroke goes on into it;"
            + " write a stroke, or a dot for a rest; -",
        "kick : {-x}x . . .; each bar is a variation of its own, so no stroke goes on into it;"
            + " write a stroke, or a dot for a rest; -",
        "kick : x . . . | % | . x . .; each bar is a variation of its own, so none stands before"
            + " this one; write the bar out; %",
      })
  void aVariationBeginsByItself(String lane, String message, String help, String at) {
    Diagnostic told =
        Compact.only(
            "groove a\n hihat : x x x x\nsheet s from a\n each " + lane + "\n accent ride\n",
            Severity.ERROR);
    assertThat(told.message()).isEqualTo(message);
    assertThat(told.help()).isEqualTo(help);
    assertThat(told.spot().text()).isEqualTo(at);
  }
}
