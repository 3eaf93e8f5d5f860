package tabor.emit.musicxml;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Chart;
import tabor.groove.Lesson;
import tabor.groove.Section;
import tabor.perform.Performer;
import tabor.perform.Sound;
import tabor.resolve.Options;

/** What a reader of the file plays of a chart, repeats and all, against what Tabor plays. */
class ChartPlaybackTest {
  private static final String SECTIONS =
      """
      groove beat
        hihat : xx xx xx xx
        kick  : x  .  x  .
      groove four
        kick  : x . . . | xx . . . | xxx . . . | xxxx . . .
      groove toms
        tom1  : xxxx xxxx . .
        floor : . . xxxx xxxx
      groove run
        pickup 1 beat
        snare : xxxx
      groove lead
        pickup 1 beat
        snare : xxxx | x . . .
      chart c
      """;

  private static Lesson lesson(String lines) {
    Loader alone = (user, written) -> Loader.Found.trouble(user, Loader.Trouble.MISSING);
    return new Compiler(alone)
        .compile(
            Path.of("a.tabor"), SECTIONS + "  " + lines.replace("; ", "\n  ") + "\n", Options.NONE)
        .lesson();
  }

  private static byte[] bytes(Lesson lesson) {
    return MusicXml.bytes(lesson, Chart.class::isInstance);
  }

  private static List<String> performed(Lesson lesson) {
    Set<String> found = new LinkedHashSet<>();
    for (Section section : lesson.sections()) {
      if (section instanceof Chart chart) {
        for (Sound sound : Performer.chart(chart).sounds()) {
          if (sound.surface() != null) {
            found.add(sound.start() + " P1-" + sound.surface().name());
          }
        }
      }
    }
    return new ArrayList<>(found);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "play beat 4 times",
        "play beat 4 times fill toms",
        "play beat 4 times fill run",
        "play beat 1 time fill run",
        "play four 2 times fill toms",
        "play four 2 times fill run",
        "play four 2 times fill lead",
        "play beat 8 bars fill toms; play toms",
        "play beat then four 3 times fill run",
        "play beat 3 times fill toms; hold 4 beats",
        "play beat; hold 4 beats",
        "climb beat from 60 to 80 by 10 every 2 times",
        "trade beat 1 bar 4 times",
        "trade four 2 bars 4 times; play beat",
        "trade four 1 bar 4 times",
        "trade four 4 bars 1 time",
        "count-in 1 bar; trade beat 1 bar 2 times; rest 2 bars; play beat 2 times fill run",
      })
  void playsWhatTaborPlays(String lines) throws Exception {
    Lesson lesson = lesson(lines);
    assertThat(performed(lesson)).isNotEmpty();
    assertThat(Playback.ofValid(bytes(lesson)).strokes())
        .containsExactlyInAnyOrderElementsOf(performed(lesson));
  }

  private static int count(String lines, String what) {
    return new String(bytes(lesson(lines)), StandardCharsets.UTF_8).split(what, -1).length - 1;
  }

  /** One hold sign, on the last stroke of the last time; none on what is repeated. */
  @Test
  void theHoldSignStandsOnTheLastStroke() {
    assertThat(count("play beat 4 times; hold 4 beats", "<fermata")).isEqualTo(1);
    assertThat(count("play beat 4 times; hold 4 beats", "times=\"3\"")).isEqualTo(1);
    assertThat(count("climb beat from 60 to 80 by 10 every 2 times; hold 2 beats", "<fermata"))
        .isEqualTo(1);
    assertThat(count("play beat 4 times; rest 1 bar", "<fermata")).isZero();
    String text = new String(bytes(lesson("play toms; hold 4 beats")), StandardCharsets.UTF_8);
    String after = text.substring(text.indexOf("<fermata"));
    assertThat(after).doesNotContain("<step>").contains("light-heavy");
  }

  /** A gradual change begins with the tempo that it begins with. */
  @Test
  void aGradualChangeBeginsWhereItBegins() {
    String text =
        new String(
            bytes(lesson("tempo 92 to 60 over 4 bars; play beat 4 times; play toms")),
            StandardCharsets.UTF_8);
    assertThat(text.indexOf("<per-minute>92"))
        .isPositive()
        .isLessThan(text.indexOf("<per-minute>60"));
  }
}
