package tabor.emit.musicxml;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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

  private static List<String> all(String pattern, String text) {
    List<String> found = new ArrayList<>();
    Matcher matcher = Pattern.compile(pattern).matcher(text);
    while (matcher.find()) {
      found.add(matcher.group(1));
    }
    return found;
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
    assertThat(all("(<measure )", text)).hasSize(bars);
    assertThat(String.join(", ", all("times=\"(\\d+)\"", text))).isEqualTo(times);
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
    assertThat(String.join("; ", all("<words[^>]*>([^<]*)</words>", text(lines)))).contains(words);
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
    assertThat(all("(<measure )", text)).hasSize(2);
    assertThat(text.indexOf("The end")).isGreaterThan(text.lastIndexOf("<measure "));
    assertThat(all("(<measure )", text("play beat"))).hasSize(1);
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
    assertThat(all("<words[^>]*>(four|beat)</words>", text))
        .as("played on it is not named again, after a rest it is")
        .containsExactly("four", "beat", "beat");
  }
}
