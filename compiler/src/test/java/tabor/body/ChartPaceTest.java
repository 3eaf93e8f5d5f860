package tabor.body;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Lesson;
import tabor.kit.Kit;
import tabor.resolve.Options;
import tabor.rhythm.Time;

/** What a chart asks of the body beyond its sections, and figures of rolls and kits. */
class ChartPaceTest {
  /** Sixteenths and quintuplets of one hand: 4T/60 and 5T/60 a second; 10 are the most. */
  private static final String SECTIONS =
      """
      tempo 100
      groove g
        snare : rrrr . rrrrr .
      groove fast
        tempo 170
        snare : rrrr . . .
      chart c
      """;

  private static List<Diagnostic> told(String lines) {
    return new Compiler(Loader.NONE)
        .compile(
            Path.of("a.tabor"), SECTIONS + "  " + lines.replace("; ", "\n  ") + "\n", Options.NONE)
        .diagnostics();
  }

  @ParameterizedTest
  @CsvSource({
    "play g at tempo 160, at tempo 160 the right hand plays 13.3 strokes per second from 3",
    "play g at tempo 160; play g at tempo 170; play g, at tempo 170 the right hand plays 14.2",
    "play g at tempo 170; play g at tempo 160, at tempo 170 the right hand plays 14.2",
    "climb g from 80 to 160 by 20 every 2 times, at tempo 160 the right hand plays 13.3",
    "trade g 1 bar 2 times at tempo 160, at tempo 160 the right hand plays 13.3",
    "play g fast at tempo 160, at tempo 160 the right hand plays 13.3",
  })
  void theFastestThatASectionIsPlayedAt(String lines, String message) {
    List<Diagnostic> told = told(lines);
    assertThat(told).as("the section of tempo 170 has its own, the chart one").hasSize(2);
    assertThat(told.get(1).message()).startsWith(message);
    assertThat(told.get(1).labels()).extracting(Diagnostic.Label::text).containsExactly("here");
  }

  @ParameterizedTest
  @CsvSource({
    "play g", "play g at tempo 120",
        "play g at tempo 60; climb g from 60 to 110 by 10 every 1 times",
    // The section says it already, and more of the same is nothing new.
    "play fast", "play fast at tempo 180", "play fast at tempo 170",
  })
  void nothingNewIsToldOfAChart(String lines) {
    assertThat(told(lines)).hasSize(1);
  }

  /** A diddle that is held half its length longer is three strokes. */
  @ParameterizedTest
  @CsvSource({".r/ . . ., 2", ".r/ -... . ., 3", ".r/ -. . ., 4", ".r/ - . ., 6"})
  void everyStrokeOfARollCounts(String word, int strokes) {
    Lesson lesson =
        new Compiler(Loader.NONE)
            .compile(
                Path.of("a.tabor"), "tempo 60\ngroove g\n snare : " + word + "\n", Options.NONE)
            .lesson();
    // A bar of 4/4 at 60 lasts four seconds.
    assertThat(Difficulty.of(lesson.grooves().get(0)).perSecond().values())
        .containsExactly(Time.of(strokes, 4));
  }

  /** What the kit lacks is struck where its stand-in is. */
  @Test
  void aStandInStandsForThePlaceToo() {
    Kit four =
        new Compiler(Loader.NONE)
            .compile(Path.of("a.tabor"), "on four-piece\ngroove g\n tom2 : x . . .\n", Options.NONE)
            .lesson()
            .grooves()
            .get(0)
            .setting()
            .kit();
    KitPlaces places = KitPlaces.of(four);
    assertThat(places.of(Played.surface("tom2"))).isEqualTo(places.of(Played.surface("floor")));
    Kit left = four.mirrored();
    int x = KitPlaces.of(left).of(Played.surface("floor")).x();
    assertThat(x).isNotZero();
    assertThat(KitPlaces.written(left).of(Played.surface("floor")).x()).isEqualTo(-x);
    assertThat(KitPlaces.of(left).of(Played.surface("floor")).x()).isEqualTo(x);
  }
}
