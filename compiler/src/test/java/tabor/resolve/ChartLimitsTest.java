package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.diagnostic.Diagnostic;

/** What lines of charts cannot ask for, each at its limit, and what is said then. */
class ChartLimitsTest {
  private static List<Diagnostic> told(String header, String lines) {
    return ChartLinesTest.compile(header, lines, Options.NONE).diagnostics();
  }

  private static Diagnostic only(String lines) {
    List<Diagnostic> all = told("", lines);
    assertThat(all).as(lines).hasSize(1);
    return all.get(0);
  }

  @ParameterizedTest
  @MethodSource("tooMuch")
  void moreThanIsPlayedIsToldAtItsLimit(String most, String more, String message) {
    assertThat(told("", most)).as(most).isEmpty();
    Diagnostic told = only(more);
    assertThat(told.code().word()).isEqualTo("too-long");
    assertThat(told.message()).startsWith(message);
  }

  static Stream<Arguments> tooMuch() {
    String eight = " play s s s s s s s s s s s s s s s s s s s s s s s s s s s s s s s s s s s s";
    return Stream.of(
        Arguments.of(" count-in 64 bars\n", " count-in 65 bars\n", "this count-in is longer"),
        Arguments.of(" rest 512 bars\n", " rest 513 bars\n", "this rest is longer"),
        Arguments.of(
            " click 512 bars on 1 off\n",
            " click 513 bars on 1 off\n",
            "this stretch of click is longer"),
        Arguments.of(
            " click 1 bar on 512 off\n",
            " click 1 bar on 513 off\n",
            "this stretch without click is longer"),
        Arguments.of(
            " tempo 60 to 70 over 100000 bars\n",
            " tempo 60 to 70 over 100001 bars\n",
            "this change of tempo is longer"),
        Arguments.of(
            " climb two from 60 to 60 by 1 every 10800 times\n",
            " climb two from 60 to 60 by 1 every 10801 times\n",
            "here the chart grows longer than 24 hours"),
        Arguments.of(
            " climb two from 600 to 600 by 1 every 33333 times\n",
            " climb two from 600 to 600 by 1 every 33334 times\n",
            "here the chart grows beyond 100000 strokes"),
        // 51 rungs of three strokes.
        Arguments.of(
            " climb two from 550 to 600 by 1 every 653 times\n",
            " climb two from 550 to 600 by 1 every 654 times\n",
            "here the chart grows beyond 100000 strokes"),
        Arguments.of(
            " climb two from 99 to 599 by 0.05 every 2 bars\n",
            " climb two from 99 to 599.1 by 0.05 every 2 bars\n",
            "this ladder has more than 10000 steps"),
        Arguments.of(" rest 1440 minutes\n", " rest 1441 minutes\n", "this is longer than 24"),
        Arguments.of(
            " play two for 1440 minutes\n", " play two for 86401 seconds\n", "this is longer than"),
        // Four beats a second: a bar a second, a day has 86400.
        Arguments.of(
            " play three two 200 bars at tempo 240\n",
            " play three two 100001 bars at tempo 240\n",
            "this line is longer"),
        Arguments.of(
            " play three 100000 times at tempo 240\n",
            " play two 33334 times at tempo 240\n",
            "here the chart grows beyond 100000 strokes"),
        // 90 beats a minute: 4/4 lasts 8/3 s, two bars 16/3 s, so that 16200 times last a day.
        Arguments.of(
            " play two 16200 times\n",
            " play two 16200 times\n count-in 1 bar\n",
            "here the chart grows longer than 24 hours"),
        Arguments.of(
            " rest 512 bars\n play two 15944 times\n",
            " rest 512 bars\n play two 15945 times\n",
            "here the chart grows longer than 24 hours"),
        Arguments.of(
            " count-in 64 bars\n play two 16168 times\n",
            " count-in 64 bars\n play two 16169 times\n",
            "here the chart grows longer than 24 hours"),
        Arguments.of(
            " trade three 1 bar 100000 times at tempo 600\n",
            " trade three 1 bar 100001 times at tempo 600\n",
            "this line is longer"),
        // A bar of two and a bar of the student's last 16/3 s.
        Arguments.of(
            " trade two 1 bar 16200 times\n",
            " trade two 1 bar 16201 times\n",
            "here the chart grows longer than 24 hours"),
        Arguments.of(
            " trade two 1 bar 16200 times\n",
            " trade two 1 bar 100000 times\n",
            "here the chart grows longer than 24 hours"),
        Arguments.of(
            eight + " s".repeat(134) + " two two\n",
            eight + " s".repeat(134) + " two two two\n",
            "one line plays at most 512 sections"));
  }

  @ParameterizedTest
  @MethodSource("linesAtWhichItIsTooMuch")
  void itIsToldAtTheLineThatIsTooMuch(String lines, String line) {
    Compiled compiled = ChartLinesTest.compile("", lines, Options.NONE);
    assertThat(compiled.diagnostics()).hasSize(1);
    assertThat(compiled.span(compiled.diagnostics().get(0).spot()).in(compiled.text()))
        .isEqualTo(line);
  }

  static Stream<Arguments> linesAtWhichItIsTooMuch() {
    return Stream.of(
        Arguments.of(
            " play three 2 times\n trade two 1 bar 16201 times\n play three\n",
            "trade two 1 bar 16201 times"),
        Arguments.of(
            " rest 720 minutes\n play three\n rest 721 minutes\n rest 1 bar\n", "rest 721 minutes"),
        Arguments.of(
            " play three 2 times\n play two 16200 times\n hold 4 beats\n count-in 1 bar\n",
            "play two 16200 times"),
        Arguments.of(
            " play three for 1 minute at tempo 240\n play three 99999 times at tempo 600\n",
            "play three 99999 times at tempo 600"));
  }

  @Test
  void whatIsTooLongIsToldWithTheMostThatGoes() {
    assertThat(only(" count-in 65 bars\n").help()).isEqualTo("write 64 or fewer");
    assertThat(only(" rest 513 bars\n").help()).isEqualTo("write 512 or fewer");
    Diagnostic trade = only(" trade three 2 bars 4 times\n");
    assertThat(trade.message()).isEqualTo("“three” has 1 bar, so 2 bars of it cannot be traded");
    assertThat(trade.help()).isEqualTo("trade 1 bar, or make a step of it with “bars 2”");
  }

  @Test
  void aLadderInBarsPlaysWholeSections() {
    Diagnostic climb = only(" climb two from 60 to 70 by 5 every 3 bars\n");
    assertThat(climb.code().word()).isEqualTo("bar-count");
    assertThat(climb.message()).isEqualTo("“two” has 2 bars, which do not divide 3 bars");
    assertThat(climb.help()).isEqualTo("climb every 2 bars, or a multiple");
  }

  @ParameterizedTest
  @MethodSource("cues")
  void aCueStandsInABarOfTheNextLine(String line, int last) {
    String cue = " cue \"Now\" in bar ";
    assertThat(told("", cue + last + "\n" + line)).isEmpty();
    Diagnostic told = only(cue + (last + 1) + "\n" + line);
    assertThat(told.code().word()).isEqualTo("count-outside-bar");
    assertThat(told.message())
        .isEqualTo(
            "the line below has "
                + (last == 1 ? "1 bar" : last + " bars")
                + ", so there is no bar "
                + (last + 1));
    assertThat(told.help()).isEqualTo("the last is bar " + last);
  }

  static Stream<Arguments> cues() {
    return Stream.of(
        Arguments.of(" play three\n play two\n", 1),
        Arguments.of(" play two 4 times\n", 8),
        Arguments.of(" play three two 4 times\n", 12),
        Arguments.of(" play two 5 bars\n", 5),
        Arguments.of(" play s 5 bars\n", 5),
        Arguments.of(" play s each 5 bars\n", 15),
        Arguments.of(" play s each 2 times\n", 12),
        Arguments.of(" rest 1 bar\n trade two 2 bars 3 times\n", 12),
        Arguments.of(" climb two from 60 to 70 by 5 every 2 times\n", 12));
  }

  @Test
  void aCueInABarNeedsALineBelow() {
    Diagnostic told = only(" play two\n cue \"Now\" in bar 1\n rest 2 bars\n");
    assertThat(told.code().word()).isEqualTo("nothing-there");
    assertThat(told.message()).contains("no bar 1 for this cue");
    assertThat(told("", " cue \"x\" in bar 99\n play two for 1 minute\n"))
        .as("only the time says how many bars there are")
        .isEmpty();
    assertThat(told("", " cue \"x\" in bar 99\n climb two from 60 to 70 by 5 for 1 minute\n"))
        .isEmpty();
  }

  @Test
  void aHoldNeedsSomethingPlayedAbove() {
    assertThat(only(" count-in 1 bar\n hold 2 beats\n play two\n").code().word())
        .isEqualTo("nothing-there");
    for (String line :
        List.of("play two", "trade two 1 bar", "climb two from 60 to 60 by 1 every 1 times")) {
      assertThat(ChartLinesTest.items(" " + line + "\n rest 1 bar\n hold 2 beats\n"))
          .endsWith("; hold 2");
    }
  }

  @Test
  void namesOfALineAreLookedUp() {
    assertThat(only(" play too\n").help()).contains("two");
    Diagnostic sheet = only(" climb s from 60 to 70 by 5 every 1 times\n");
    assertThat(sheet.message()).isEqualTo("“s” is a sheet; here stands one section");
    assertThat(sheet.help()).isEqualTo("name one of its variations: s-1");
    assertThat(only(" play two fill s\n").message()).contains("is a sheet");
    Diagnostic fill = only(" play two fill three\n");
    assertThat(fill.code().word()).isEqualTo("bar-length");
    assertThat(fill.message()).isEqualTo("“three” is in 3/4, but the bar that it fills in 4/4");
    assertThat(fill.help()).isEqualTo("choose a fill in 4/4");
  }

  @Test
  void aChartPlaysNoOtherChart() {
    Loader week =
        (user, written) ->
            Loader.Found.text(Path.of(written), "groove g\n kick : x . . .\nchart slow\n play g\n");
    List<Diagnostic> told =
        new Compiler(week)
            .compile(
                Path.of("chart.tabor"), "use \"week.tabor\"\nchart c\n play slow\n", Options.NONE)
            .diagnostics();
    assertThat(told)
        .extracting(Diagnostic::message)
        .containsExactly("“slow” is a chart; a chart plays grooves, steps and sheets");
    // Nor one of its own file, whether it stands above or below, nor itself.
    assertThat(
            Compact.problems(
                "groove g\n"
                    + " kick : x . . .\n"
                    + "chart a\n"
                    + " play g\n"
                    + " play b\n"
                    + "chart b\n"
                    + " play a\n"
                    + " play b\n"))
        .hasSize(3)
        .allMatch(problem -> problem.toString().contains("unknown-name"));
    assertThat(Compact.compile("groove g\n kick : x . . .\nchart a\n play a\n").diagnostics())
        .extracting(Diagnostic::message)
        .containsExactly("“a” is a chart; a chart plays grooves, steps and sheets");
  }

  @Test
  void aFillIsInTheMeterOfTheLastBar() {
    String turns = "groove turns\n time 4/4 3/4\n kick : x . . . | x . .\n";
    assertThat(told(turns, " play turns fill three\n")).isEmpty();
    assertThat(told(turns, " play turns fill two\n"))
        .extracting(told -> told.code().word())
        .containsExactly("bar-length");
  }

  @Test
  void whatIsLeftOutIsPlayedBySomeSectionOfTheLine() {
    assertThat(ChartLinesTest.items(" play two three without snare\n")).contains("-snare");
    Diagnostic none = only(" play two without snare\n");
    assertThat(none.code().word()).isEqualTo("nothing-there");
    assertThat(none.message()).isEqualTo("nothing of snare is played here that could be left out");
    Diagnostic unknown = only(" play two without snar\n");
    assertThat(unknown.code().word()).isEqualTo("unknown-name");
    assertThat(unknown.help()).contains("snare");
  }

  @Test
  void aChartWithAMistakeIsNotMeasuredFurther() {
    // Sixteenths of one foot at 300 are too fast; said only where the chart is whole.
    String fast = "groove fast\n kick : xxxx xxxx xxxx xxxx\n";
    assertThat(told(fast, " play fast at tempo 300\n"))
        .extracting(told -> told.code().word())
        .containsExactly("too-fast");
    for (String wrong : List.of("play nothing", "count-in 65 bars", "play two without snare")) {
      assertThat(told(fast, " play fast at tempo 300\n " + wrong + "\n"))
          .as(wrong)
          .hasSize(1)
          .noneMatch(told -> Objects.equals(told.code().word(), "too-fast"));
    }
  }
}
