package tabor.emit.musicxml;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Chart;
import tabor.groove.Lesson;
import tabor.resolve.Options;
import tabor.rhythm.Time;

/** What each line of a chart becomes in a MusicXML file: bars, repeats, words and signs. */
class ChartLinesXmlTest {
  private static final String SECTIONS =
      """
      groove beat
        kick  : x . x .
      groove four
        kick  : x . . . | xx . . . | xxx . . . | xxxx . . .
      groove lead
        pickup 1 beat
        snare : xxxx | x . . .
      groove waltz
        time 3/4
        kick : x . .
      groove turns
        time 4/4 3/4
        kick : x . . . | x . .
      groove quick
        tempo 120
        kick : x x x x
      groove same
        kick : x . x . | % | %
      groove run
        pickup 1 beat
        snare : xxxx
      sheet s from beat
        each add kick at 2 4
      chart c
      """;

  private static byte[] bytes(String lines) {
    Lesson lesson =
        new Compiler(Loader.NONE)
            .compile(
                Path.of("a.tabor"),
                SECTIONS + "  " + lines.replace("; ", "\n  ") + "\n",
                Options.NONE)
            .lesson();
    assertThat(lesson.charts()).as(lines).hasSize(1);
    byte[] bytes = MusicXml.bytes(lesson, Chart.class::isInstance);
    PublishedSchema.check(bytes);
    return bytes;
  }

  private static String text(String lines) {
    return new String(bytes(lines), StandardCharsets.UTF_8);
  }

  /** How often each repeated stretch is played; 1 for a bar outside of them is not listed. */
  @ParameterizedTest
  @CsvSource({
    "play beat, 1, ''",
    "play beat 4 times, 1, 4",
    "play four 6 bars, 4, 2",
    "play four 8 bars, 4, 2",
    "play four 9 bars, 4, 3",
    "play four 4 bars, 4, ''",
    // At 90 a bar lasts 8/3 s: 23 bars are the first number that lasts a minute.
    "play beat for 1 minute, 1, 23",
    "play beat four 3 times, 5, 3",
    "play s 3 times, 2, 3",
    "play s each 3 times, 2, '3, 3'",
    "play s each 2 bars, 2, '2, 2'",
    "play s each for 1 minute, 2, '23, 23'",
    // A fill that is not written as notes: it is as long as its section with its pickup, or the
    // line ends within the section.
    "play beat 2 times fill lead, 1, 2",
    "play four 6 bars fill beat, 4, 2",
    "play four for 1 minute fill beat, 4, 6",
    // Alone it would be its pickup and no more.
    "play run, 2, ''",
    "play beat; count-in 1 bar, 2, ''",
    "click off; play beat, 1, ''",
    "click off; play beat 2 times, 2, ''",
    "click off; play beat 3 times, 2, 2",
    "trade beat 1 bar 1 time, 2, ''",
    "trade four 3 bars 4 times, 4, ''",
    "climb beat from 60 to 70 by 10 every 3 times, 2, '3, 3'",
    "climb four from 60 to 70 by 10 every 8 bars, 8, '2, 2'",
    "climb beat from 60 to 60 by 10 every 1 times, 1, ''",
    "trade beat 1 bar 4 times, 2, 4",
    "trade four 2 bars 4 times, 8, 2",
    "rest 3 bars, 3, ''",
    "count-in 2 bars; play beat, 3, ''",
    "play beat; rest 2 bars; play four, 7, ''",
  })
  void barsAndRepeats(String lines, int bars, String times) {
    String text = text(lines);
    assertThat(XmlMatches.all("(<measure )", text)).hasSize(bars);
    assertThat(String.join(", ", XmlMatches.all("times=\"(\\d+)\"", text))).isEqualTo(times);
    assertThat(XmlMatches.all("(<repeat direction=\"forward\")", text))
        .as("each has its beginning")
        .hasSize(XmlMatches.all("(<repeat direction=\"backward\")", text).size());
  }

  @ParameterizedTest
  @CsvSource({
    "rest 30 seconds; play beat, 30 seconds",
    "cue \"Loud now\"; play beat, Loud now",
    "play four 6 bars, 6 bars",
    "play beat for 1 minute, 1 minute",
    "play beat 2 times without kick, kick",
    "trade beat 1 bar 4 times, you",
    "trade four 2 bars 3 times, Trade",
    "tempo 92 to 60 over 4 bars; play beat 4 times, 60",
    "count-in 1 bar; play beat, Count in 1 bar",
    "count-in 2 bars; play beat, Count in 2 bars",
    "click at 2 4; play beat, 'click on beats 2, 4'",
    "play beat; hold 4 beats, 4 beats",
    "climb beat from 60 to 70 by 10 for 2 minutes, 2 minutes",
    "climb beat from 60 to 70 by 10 every 2 times without kick, kick",
    "text \"Slowly\"; play beat, Slowly",
  })
  void wordsAreWritten(String lines, String words) {
    assertThat(String.join("; ", XmlMatches.all("<words[^>]*>([^<]*)</words>", text(lines))))
        .contains(words);
  }

  @Test
  void aTradeNamesItsSectionAndTheStudent() {
    assertThat(XmlMatches.all("<words[^>]*>([^<]*)</words>", text("trade four 2 bars 4 times")))
        .containsExactly("Trade 2 bars, then 2 for you, 4 times", "four", "you", "you");
    assertThat(
            XmlMatches.all(
                "<words[^>]*>([^<]*)</words>", text("trade four 3 bars 4 times; hold 2 beats")))
        .containsExactly(
            "Trade 3 bars, then 3 for you, 4 times", "Hold the last stroke 2 beats", "four");
  }

  /** Time and tempo are said where they change, and where a repeat comes back from others. */
  @ParameterizedTest
  @CsvSource({
    "play beat; play four 3 times, 4/4, 90",
    "play beat; play beat waltz, 4/4 3/4, 90",
    "play beat; play beat waltz 3 times, 4/4 4/4 3/4, 90 90 90",
    "play beat; play turns, 4/4 3/4, 90",
    "play beat; play turns 3 times, 4/4 4/4 3/4, 90",
    "play beat; play beat quick, 4/4, 90 120",
    "play beat; play beat quick 2 times, 4/4 4/4 4/4, 90 90 120",
    "rest 1 bar; play beat, 4/4, 90",
    "tempo 92 to 60 over 2 bars; rest 2 bars; play beat, 4/4, 92 60",
  })
  void timesAndTempi(String lines, String times, String tempi) {
    String text = text(lines);
    List<String> beats = XmlMatches.all("<beats>([^<]*)<", text);
    List<String> units = XmlMatches.all("<beat-type>([^<]*)<", text);
    List<String> found = new ArrayList<>();
    for (int i = 0; i < beats.size(); i++) {
      found.add(beats.get(i) + "/" + units.get(i));
    }
    assertThat(String.join(" ", found)).isEqualTo(times);
    assertThat(String.join(" ", XmlMatches.all("<per-minute>([^<]*)<", text))).isEqualTo(tempi);
  }

  /** A measure has one barline at its end at most: double after a section, final at the end. */
  @ParameterizedTest
  @CsvSource({
    "play four; play beat, '4 light-light, 5 light-heavy'",
    "play four 2 times; play beat, '4 light-heavy, 5 light-heavy'",
    "play beat; trade four 2 bars 4 times; play beat,"
        + " '1 light-light, 3 light-light, 7 light-light, 9 light-heavy, 10 light-heavy'",
    "rest 2 bars; play beat, 3 light-heavy",
  })
  void barlines(String lines, String barlines) {
    List<String> found = new ArrayList<>();
    String[] measures = text(lines).split("<measure ", -1);
    for (int i = 1; i < measures.length; i++) {
      List<String> styles =
          XmlMatches.all("location=\"right\">\\s*<bar-style>([^<]*)<", measures[i]);
      assertThat(styles).hasSizeLessThanOrEqualTo(1);
      for (String style : styles) {
        found.add(i + " " + style);
      }
    }
    assertThat(String.join(", ", found)).isEqualTo(barlines);
  }

  /** The bars before a fill go on repeating the first; what the fill plays is written out. */
  @Test
  void barsThatAFillTakesAreNoRepeats() {
    String repeat = "(<measure-repeat type=\"start\")";
    assertThat(XmlMatches.all(repeat, text("play same 1 time"))).hasSize(1);
    String[] measures = text("play same 1 time fill beat").split("<measure ", -1);
    assertThat(measures).hasSize(1 + 3);
    assertThat(measures[2]).contains("<measure-repeat type=\"start\">");
    assertThat(measures[3]).contains("<measure-repeat type=\"stop\"");
  }

  /** A chart of more than 1024 bars is told in words; how many a line may take is counted up. */
  @ParameterizedTest
  @CsvSource({
    "rest 512 bars, 1, 512",
    "count-in 64 bars, 15, 64",
    "play four, 68, 4",
    "play beat waltz, 85, 4",
    "trade four 2 bars 2 times, 113, 7",
    "climb four from 60 to 80 by 10 every 1 times, 51, 4",
    "tempo 92 to 60 over 100 bars, 10, 24",
  })
  void aChartOfSoManyBarsIsWrittenOut(String line, int often, int rest) {
    String lines = (line + "; ").repeat(often);
    int bars = Math.min(rest, 512);
    assertThat(isTooLong(lines + "rest " + bars + " bars")).isFalse();
    assertThat(isTooLong(lines + "rest " + bars + " bars; rest 1 bar")).isTrue();
  }

  private static boolean isTooLong(String lines) {
    Lesson lesson =
        new Compiler(Loader.NONE)
            .compile(
                Path.of("a.tabor"),
                SECTIONS + "  " + lines.replace("; ", "\n  ") + "\n",
                Options.NONE)
            .lesson();
    assertThat(lesson.charts()).hasSize(1);
    return ChartLength.isTooLong(lesson.charts().get(0));
  }

  @Test
  void signsAreWritten() {
    assertThat(text("mark \"A\"; play beat")).contains("<rehearsal>A</rehearsal>");
    assertThat(text("dynamic ff; play beat")).contains("<ff/>");
    assertThat(text("play beat at tempo 72")).contains("<per-minute>72</per-minute>");
    assertThat(text("feel swing eighths as triplets; play beat"))
        .contains("swing eighths as triplets (played straight by this file)");
  }

  @Test
  void wordsAtTheEndStandOverABarOfTheirOwn() {
    String text = text("play beat; cue \"The end\"");
    assertThat(XmlMatches.all("(<measure )", text)).hasSize(2);
    assertThat(text.indexOf("The end")).isGreaterThan(text.lastIndexOf("<measure "));
    assertThat(XmlMatches.all("(<measure )", text("play beat"))).hasSize(1);
  }

  @Test
  void aCountInLeavesRoomForThePickup() {
    assertThat(ReadBack.of(bytes("count-in 1 bar; play lead")).measures())
        .extracting(ReadBack.Read::length)
        .containsExactly(Time.of(3, 4), Time.of(1, 4), Time.ONE);
    for (String line :
        List.of("climb lead from 60 to 60 by 1 every 1 times", "trade lead 1 bar 2 times")) {
      assertThat(ReadBack.of(bytes("count-in 1 bar; " + line)).measures().get(0).length())
          .as(line)
          .isEqualTo(Time.of(3, 4));
    }
    assertThat(
            ReadBack.of(bytes("count-in 1 bar; rest 1 bar; play lead")).measures().get(0).length())
        .as("the rest comes first")
        .isEqualTo(Time.ONE);
    assertThat(
            ReadBack.of(bytes("count-in 1 bar; cue \"x\"; play lead")).measures().get(0).length())
        .isEqualTo(Time.of(3, 4));
    assertThat(ReadBack.of(bytes("count-in 1 bar; play waltz")).measures().get(0).length())
        .isEqualTo(Time.of(3, 4));
  }

  @Test
  void aSectionIsNamedWhereItBegins() {
    String text = text("play four; play four; play beat; rest 1 bar; play beat");
    assertThat(XmlMatches.all("<words[^>]*>(four|beat)</words>", text))
        .as("played on it is not named again, after a rest it is")
        .containsExactly("four", "beat", "beat");
  }
}
