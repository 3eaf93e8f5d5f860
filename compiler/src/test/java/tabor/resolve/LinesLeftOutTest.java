package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Chart;

/** What is left of a chart, a header or a section without the lines that are wrong. */
class LinesLeftOutTest {
  /** Sixteenths of one foot at 300 are too fast. */
  private static final String FAST = "groove fast\n kick : xxxx xxxx xxxx xxxx\n";

  private static final String CHART = FAST + "chart c \"At speed\"\n play fast at tempo 300\n";

  private static Chart chart(String text) {
    Compiled compiled = Compact.compile(text);
    return compiled.lesson().charts().get(0);
  }

  @Test
  void aChartIsMeasuredUnlessALineIsBroken() {
    assertThat(Compact.problems(CHART)).containsExactly("3 too-fast");
    assertThat(Compact.problems(CHART + " goal \"Even at 300\"\n page new\n"))
        .containsExactly("3 too-fast");
    assertThat(Compact.problems(CHART + " tempoo 40\n")).containsExactly("5 syntax");
  }

  @Test
  void aChartHasItsTitleAndItsGoal() {
    Chart chart = chart(CHART + " goal \"Even at 300\"\n");
    assertThat(chart.title()).isEqualTo("At speed");
    assertThat(chart.page().goals()).containsExactly("Even at 300");
    assertThat(chart(FAST + "chart c\n play fast\n").title()).isNull();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "count-in 65 bars",
        "rest 513 bars",
        "tempo 60 to 70 over 100001 bars",
        "click 513 bars on 1 off",
        "rest 1441 minutes",
        "play fast 100001 times",
        "hold 2 beats",
      })
  void aChartGoesOnWithoutALineThatAsksForTooMuch(String line) {
    Chart chart = chart(FAST + "chart c\n " + line + "\n play fast\n");
    assertThat(chart.items()).hasSize(1);
    assertThat(chart.items().get(0)).isInstanceOf(Chart.Play.class);
  }

  @Test
  void whereTheMeterIsBrokenNothingIsMeasuredByTheUsualOne() {
    String three = "groove g\n kick : x . .\n";
    assertThat(Compact.problems("time 3 4\n" + three)).containsExactly("1 syntax");
    assertThat(Compact.problems("time 3/4\ntime 3 4\n" + three)).containsExactly("2 syntax");
    assertThat(Compact.problems("tempo x\n" + three)).containsExactly("1 syntax", "3 bar-length");
  }

  @Test
  void aLimbStrikesNothingThatItCannotReach() {
    String hands = "groove g\n hands : r l . .\n";
    String strokes = "0 R snare, 1/4 L snare";
    for (String line :
        List.of(
            "right plays kick",
            "right foot plays snare at 1",
            "add kick with right hand at 3",
            "add snare with left foot at 3",
            "split left between snare and kick")) {
      String text = hands + " " + line + "\n";
      assertThat(Compact.problems(text)).as(line).containsExactly("3 wrong-limb");
      assertThat(Compact.last(text)).as(line).isEqualTo(strokes);
    }
    assertThat(Compact.last(hands + " right plays kick\n add right at 3\n"))
        .isEqualTo(strokes + ", 1/2 R snare");
  }

  /** What is missing there may have been in what was wrong above. */
  @Test
  void nothingIsMissedInAStepFromASectionThatIsNotWhole() {
    String miss = "step s\n accent kick at 4\n";
    assertThat(Compact.problems("groove g\n kick : x . . .\n" + miss))
        .containsExactly("4 nothing-there");
    assertThat(Compact.problems("groove g\n kick : x . . .\n blank 1 bar\n" + miss))
        .as("empty staves beside parts")
        .containsExactly("3 syntax");
    assertThat(Compact.problems("groove g\n blank 1 bar\n kick : x . . .\n" + miss))
        .containsExactly("3 syntax");
    assertThat(
            Compact.problems(
                "kit gongs\n surface gong letter g key 52\ngroove g\n on gongs\n right : g . . .\n"
                    + "step s\n on five-piece\n accent crash at 1\n"))
        .as("a kit without the gong")
        .containsExactly("7 missing-surface");
  }

  @Test
  void aStepComesFromAGrooveAStepOrAVariation() {
    String lesson =
        "groove g\n kick : x . . .\nsheet s from g\n each add kick at 2 3\nchart c\n play g\n";
    assertThat(Compact.problems(lesson + "step t from s-2\n drop kick at 3\n")).isEmpty();
    Diagnostic sheet = Compact.only(lesson + "step t from s\n drop kick\n");
    assertThat(sheet.message()).isEqualTo("“s” is a sheet, not a groove or a step");
    assertThat(sheet.help()).isEqualTo("name one of its variations: s-1");
    Loader week =
        (user, written) ->
            Loader.Found.text(Path.of(written), lesson.replace("chart c", "chart w"));
    List<Diagnostic> told =
        new Compiler(week)
            .compile(
                Path.of("a.tabor"), "use \"week.tabor\"\nstep t from w\n drop kick\n", Options.NONE)
            .diagnostics();
    assertThat(told).hasSize(1);
    assertThat(told.get(0).message()).isEqualTo("“w” is a chart, not a groove or a step");
    assertThat(told.get(0).help()).isEqualTo("name a groove or a step");
  }

  @Test
  void whatAWrongChartPlaysCountsToo() {
    String play = " play g 60000 times at tempo 400\n";
    String lesson = "groove g\n kick : x . . .\nchart a\n" + play;
    assertThat(Compact.problems(lesson)).isEmpty();
    assertThat(Compact.problems(lesson + " hold 2 beats\n play nobody\nchart b\n" + play))
        .containsExactly("6 unknown-name", "8 too-long");
    assertThat(Compact.only(lesson + "chart b\n" + play).message())
        .isEqualTo("the charts so far have more than 100000 strokes together");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "snar : x x x",
        "snar : - . . .",
        "snar : R(R) . . .",
        "snar : xx xxx xx xx",
        "snar : x - . .",
        "ostinato snar : R(R) . . .",
        "snar plays paradiddle in sixteenths",
      })
  void ofAPartOfNothingOnlyTheNameIsTold(String part) {
    Diagnostic told = Compact.only("groove g\n " + part + "\n");
    assertThat(told.code().word()).isEqualTo("unknown-name");
    assertThat(told.help()).isEqualTo("did you mean “snare”?");
  }
}
