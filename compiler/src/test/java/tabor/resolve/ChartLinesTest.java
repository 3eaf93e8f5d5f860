package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Section;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/**
 * What the lines of charts become, as section 9 of the notation and section 2 of the page on
 * teaching say; tempi and bars are worked out by hand.
 */
class ChartLinesTest {
  /** Two bars of 4/4, two of 6/8, one of 3/4, and a sheet of three. */
  private static final String BAND =
      "groove two\n kick : x . x . | x . . .\ngroove six\n time 6/8\n kick : x x | x .\n"
          + "groove three\n time 3/4\n snare : x . .\nsheet s from two\n each drop kick at 3\n"
          + " each add kick at 2 4\n";

  static Compiled compile(String header, String lines, Options options) {
    return new Compiler(Loader.NONE)
        .compile(Path.of("chart.tabor"), header + "\n" + BAND + "chart c\n" + lines, options);
  }

  private static Chart chart(String header, String lines, Options options) {
    Compiled compiled = compile(header, lines, options);
    assertThat(compiled.diagnostics()).as(lines).isEmpty();
    return compiled.lesson().charts().get(0);
  }

  private static String items(String header, String lines, Options options) {
    return chart(header, lines, options).items().stream()
        .map(item -> item.match(WORDS))
        .collect(Collectors.joining("; "));
  }

  static String items(String lines) {
    return items("", lines, Options.NONE);
  }

  private static final Chart.Cases<String> WORDS =
      new Chart.Cases<>() {
        @Override
        public String countIn(Chart.CountIn one) {
          return "count " + one.bars() + " of " + name(one.like()) + " at " + at(one.tempo());
        }

        @Override
        public String click(Chart.SetClick one) {
          return one.click() + " " + one.beats() + " " + one.barsOn() + "/" + one.barsOff();
        }

        @Override
        public String play(Chart.Play one) {
          return one.turns().stream().map(ChartLinesTest::turn).collect(Collectors.joining(", "))
              + " "
              + amount(one.amount())
              + (one.each() ? " each" : "")
              + extras(one.extras())
              + " as "
              + one.named().stream().map(Section::name).collect(Collectors.joining(" "));
        }

        @Override
        public String rest(Chart.Rest one) {
          return "rest " + one.bars() + " of " + name(one.like()) + " at " + at(one.tempo());
        }

        @Override
        public String climb(Chart.Climb one) {
          return one.groove().name()
              + one.tempi().stream().map(ChartLinesTest::at).toList()
              + ((one.feel().isStraight() ? "" : "~" + one.feel().share())
                  + " by "
                  + one.by()
                  + " every "
                  + one.every()
                  + one.unit())
              + (one.seconds() == null ? "" : " " + one.seconds() + "s")
              + extras(one.extras());
        }

        @Override
        public String trade(Chart.Trade one) {
          return "trade "
              + turn(one.turn())
              + " "
              + one.bars()
              + " "
              + amount(one.amount())
              + extras(one.extras());
        }

        @Override
        public String pause(Chart.Pause one) {
          return "pause " + one.seconds();
        }

        @Override
        public String ramp(Chart.Ramp one) {
          return "ramp " + at(one.from()) + " to " + at(one.to()) + " over " + one.bars();
        }

        @Override
        public String dynamic(Chart.SetDynamic one) {
          return one.loudness().name();
        }

        @Override
        public String hold(Chart.Hold one) {
          return "hold " + one.beats();
        }

        @Override
        public String cue(Chart.Cue one) {
          return one.text() + " " + one.bar();
        }

        @Override
        public String mark(Chart.Mark one) {
          return one.text();
        }
      };

  private static String name(Groove groove) {
    return groove == null ? "nothing" : groove.name();
  }

  private static String at(Tempo tempo) {
    return tempo.beat() + "=" + tempo.perMinute();
  }

  private static String turn(Chart.Turn turn) {
    String feel = turn.feel().isStraight() ? "" : "~" + turn.feel().share();
    return turn.groove().name() + "@" + at(turn.tempo()) + feel;
  }

  private static String amount(Chart.Amount amount) {
    return amount.seconds() != null
        ? amount.seconds() + "s"
        : amount.bars() > 0 ? amount.bars() + " bars" : "x" + amount.times();
  }

  private static String extras(Chart.Extras extras) {
    return extras.without().stream().map(p -> " -" + p.words()).collect(Collectors.joining())
        + (extras.fill() == null ? "" : " +" + extras.fill().name());
  }

  @ParameterizedTest
  @MethodSource("lines")
  void aLineBecomes(String lines, String items) {
    assertThat(items(lines)).isEqualTo(items);
  }

  static Stream<Arguments> lines() {
    return Stream.of(
        Arguments.of(" play two\n", "two@1/4=90 x1 as two"),
        Arguments.of(" play two six 3 times\n", "two@1/4=90, six@3/8=90 x3 as two six"),
        Arguments.of(" play two 16 bars\n", "two@1/4=90 16 bars as two"),
        Arguments.of(" play two for 3 minutes\n", "two@1/4=90 180s as two"),
        Arguments.of(" play two for 90 seconds\n", "two@1/4=90 90s as two"),
        Arguments.of(" play two at tempo 72\n", "two@1/4=72 x1 as two"),
        Arguments.of(" play s each 4 times\n", "s-1@1/4=90, s-2@1/4=90, s-3@1/4=90 x4 each as s"),
        Arguments.of(" play s-2\n", "s-2@1/4=90 x1 as s-2"),
        Arguments.of(" play two without feet, kick\n", "two@1/4=90 x1 -feet -kick as two"),
        Arguments.of(
            " play three two 4 times fill two without snare\n",
            "three@1/4=90, two@1/4=90 x4 -snare +two as three two"),
        Arguments.of(" trade two 2 bars 4 times\n", "trade two@1/4=90 2 x4"),
        Arguments.of(
            " trade two 1 bar for 2 minutes at tempo 60 without kick fill two\n",
            "trade two@1/4=60 1 120s -kick +two"),
        Arguments.of(
            " climb two from 60 to 75 by 10 every 2 times\n",
            "two[1/4=60, 1/4=70, 1/4=75] by 10 every 2TIMES"),
        Arguments.of(
            " climb six from 80 to 70 by 4 every 4 bars\n",
            "six[3/8=80, 3/8=76, 3/8=72, 3/8=70] by 4 every 4BARS"),
        Arguments.of(
            " climb two from 60 to 62 by 1 for 6 minutes without kick fill two\n",
            "two[1/4=60, 1/4=61, 1/4=62] by 1 every 1TIMES 360s -kick +two"),
        Arguments.of(
            " climb two from 60 to 60 by 5 every 3 times\n", "two[1/4=60] by 5 every 3TIMES"),
        Arguments.of(" rest 30 seconds\n rest 1 minute\n", "pause 30; pause 60"),
        Arguments.of(" dynamic ff\n mark \"A\"\n", "FF; A"),
        Arguments.of(" play two\n hold 4 beats\n", "two@1/4=90 x1 as two; hold 4"),
        Arguments.of(
            " cue \"Loud\"\n cue \"Now\" in bar 2\n play two\n",
            "Loud 0; Now 2; two@1/4=90 x1 as two"),
        Arguments.of(" click quarters\n", "QUARTERS [] 0/0"),
        Arguments.of(" click at 4 2 4\n", "ON [2, 4] 0/0"),
        Arguments.of(
            " feel swing eighths as triplets\n"
                + " play two\n"
                + " climb two from 60 to 60 by 1 every 1 times\n",
            "two@1/4=90~2/3 x1 as two; two[1/4=60]~2/3 by 1 every 1TIMES"));
  }

  @ParameterizedTest
  @MethodSource("clicks")
  void clicksCombine(String lines, String last) {
    String all = items(lines);
    assertThat(all.substring(all.lastIndexOf("; ") + 2)).isEqualTo(last);
  }

  static Stream<Arguments> clicks() {
    return Stream.of(
        Arguments.of(" click at 2 4\n click 2 bars on 1 off\n", "ON [2, 4] 2/1"),
        Arguments.of(" click 2 bars on 1 off\n click at 2 4\n", "ON [2, 4] 2/1"),
        Arguments.of(" click eighths\n click 4 bars on 4 off\n", "EIGHTHS [] 4/4"),
        Arguments.of(" click 3 bars on 1 off\n click quarters\n", "QUARTERS [] 3/1"),
        Arguments.of(" click off\n click 2 bars on 2 off\n", "ON [] 2/2"),
        Arguments.of(" click 2 bars on 2 off\n click on\n", "ON [] 0/0"),
        Arguments.of(" click at 2\n click 2 bars on 2 off\n click off\n", "OFF [] 0/0"));
  }

  @Test
  void countInsTakeMeterAndTempoOfWhatFollows() {
    assertThat(items(" count-in 2 bars\n play six two at tempo 50\n"))
        .startsWith("count 2 of six at 3/8=50;");
    assertThat(
            items(
                " play two\n"
                    + " count-in 1 bar\n"
                    + " cue \"x\"\n"
                    + " climb six from 40 to 50 by 10 every 1 times\n"))
        .contains("; count 1 of six at 3/8=40;");
    assertThat(items(" count-in 1 bar\n trade three 1 bar at tempo 70\n play two\n"))
        .startsWith("count 1 of three at 1/4=70;");
    assertThat(items("tempo 66", " play two\n count-in 1 bar\n", Options.NONE))
        .as("nothing follows: the header's tempo")
        .endsWith("count 1 of nothing at 1/4=66");
  }

  @Test
  void restsTakeMeterAndTempoOfWhatWasBeforeElseOfWhatFollows() {
    assertThat(items(" play two six at tempo 50\n rest 2 bars\n play three\n"))
        .contains("; rest 2 of six at 3/8=50;");
    assertThat(
            items(
                " climb six from 40 to 50 by 10 every 1 times\n"
                    + " mark \"A\"\n"
                    + " rest 1 bar\n"
                    + " play two\n"))
        .contains("; rest 1 of six at 3/8=50;");
    assertThat(items(" play two\n trade three 1 bar at tempo 70\n rest 1 bar\n"))
        .endsWith("rest 1 of three at 1/4=70");
    assertThat(items(" rest 3 bars\n play six\n")).startsWith("rest 3 of six at 3/8=90;");
    assertThat(items("tempo 66", " rest 3 bars\n", Options.NONE))
        .isEqualTo("rest 3 of nothing at 1/4=66");
  }

  @Test
  void aGradualTempoCountsTheBeatOfWhatFollowsAndItsEndHolds() {
    assertThat(items(" tempo 92 to 60 over 4 bars\n play six\n play two\n"))
        .isEqualTo("ramp 3/8=92 to 3/8=60 over 4; six@3/8=60 x1 as six; two@1/4=60 x1 as two");
    assertThat(items(" tempo eighth = 180 to 240 over 2 bars\n play six\n"))
        .isEqualTo("ramp 1/8=180 to 1/8=240 over 2; six@1/8=240 x1 as six");
    assertThat(items(" play two\n tempo 92 to 60 over 4 bars\n"))
        .endsWith("; ramp 1/4=92 to 1/4=60 over 4");
  }

  @Test
  void aTempoOfTheCommandLineTakesThePlaceOfAllButLaddersAndGradualChanges() {
    Options fifty = new Options(null, false, false, Time.of(50), null);
    assertThat(
            items(
                "",
                " tempo 70\n play two at tempo 80\n climb two from 60 to 60 by 1 every 1 times\n",
                fifty))
        .isEqualTo("two@1/4=50 x1 as two; two[1/4=60] by 1 every 1TIMES");
  }

  @Test
  void aPlayersShareSlowsEveryTempoOfAChart() {
    String player = "player p \"P\"\n tempo 50%";
    Options half = Options.NONE.of(players(player));
    assertThat(
            items(
                "",
                " tempo 70\n"
                    + " play two\n"
                    + " play six at tempo 80\n"
                    + " climb two from 60 to 80 by 20 every 1 times\n"
                    + " tempo 90 to 60 over 2 bars\n"
                    + " rest 1 bar\n",
                half))
        .isEqualTo(
            "two@1/4=35 x1 as two; six@3/8=40 x1 as six;"
                + " two[1/4=30, 1/4=40] by 10 every 1TIMES; ramp 1/4=45 to 1/4=30 over 2;"
                + " rest 1 of two at 1/4=40");
    assertThat(items("tempo 80", " count-in 1 bar\n", half))
        .isEqualTo("count 1 of nothing at 1/4=40");
    Options fixed = Options.NONE.of(players("player p \"P\"\n tempo 55"));
    assertThat(
            items(
                "",
                " tempo 70\n play two six\n climb two from 60 to 60 by 1 every 1 times\n",
                fixed))
        .isEqualTo("two@1/4=55, six@3/8=55 x1 as two six; two[1/4=60] by 1 every 1TIMES");
  }

  private static tabor.groove.Player players(String text) {
    Compiled compiled = Compact.compile(text + "\n" + BAND);
    assertThat(compiled.diagnostics()).isEmpty();
    return compiled.lesson().extras().players().get(0);
  }

  @Test
  void textsFollowTheHandsOfThePlayer() {
    String lines = " cue \"[Right] hand\"\n text \"[left] foot\"\n play two\n";
    assertThat(items(lines)).startsWith("Right hand 0");
    Options left = new Options(null, true, false, null, null);
    Chart mirrored = chart("", lines, left);
    assertThat(mirrored.items().get(0)).isEqualTo(new Chart.Cue("Left hand", 0));
    assertThat(mirrored.prose()).containsExactly("right foot");
    String kit = "on k\nkit k\n left-handed";
    assertThat(chart(kit, lines, Options.NONE).prose()).containsExactly("right foot");
    assertThat(chart(kit, lines, new Options("junior", false, false, null, null)).prose())
        .as("another kit is played, which is not left-handed")
        .containsExactly("left foot");
  }
}
