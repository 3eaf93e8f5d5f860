package tabor.body;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.diagnostic.Diagnostic;
import tabor.kit.Kit;
import tabor.kit.Limb;
import tabor.kit.Position;
import tabor.resolve.Options;
import tabor.source.LineIndex;

/**
 * How often a limit is told: once for each line and limb, with the worst of it and how many places
 * there are; what a step inherited is told where it came from.
 */
class FindingsTest {
  private static List<String> told(String text) {
    Compiled compiled = new Compiler(Loader.NONE).compile(Path.of("a.tabor"), text, Options.NONE);
    LineIndex lines = new LineIndex(text);
    List<String> found = new ArrayList<>();
    for (Diagnostic one : compiled.diagnostics()) {
      int line = lines.lineOf(compiled.span(one.spot()).start()) + 1;
      String message = one.message();
      int more = message.indexOf("; the same");
      int bars = message.indexOf(" and in ");
      found.add(
          line
              + " "
              + one.code().word()
              + (more < 0 ? "" : message.substring(more))
              + (bars < 0 ? "" : message.substring(bars)));
    }
    return found;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '!',
      value = {
        "snare : rr.. . . . ! ''",
        // Three sixteenths at 200, at one place and at several: a row of four has two threes.
        "snare : rrr. . . . ! 3 too-fast",
        "snare : rrrr . . . ! 3 too-fast; the same at 1 more place",
        "snare : rrrr . rrr. . ! 3 too-fast; the same at 2 more places",
        // The other hand and another line are told apart.
        "snare : rrr. . lll. . ! 3 too-fast/ 3 too-fast",
        "snare : rrr. . . ./ tom1 : . . rrr. . ! 3 too-fast/ 4 too-fast",
        // What the foot does to the hi-hat is told once a line.
        "hihat : r= r= . r=/ hihat.foot : x x x x"
            + " ! 4 hihat-contradiction; the same at 2 more places",
        "hihat : r r r= r/ hihat.foot : . x x x"
            + " ! 4 foot-on-closed-hihat; the same at 1 more place/ 4 hihat-contradiction",
        // A clash in several bars.
        "hihat : r . . . | r . . ./ left : . . . . | . . . ./ right : s . . . | . . . ."
            + " ! 5 limb-conflict",
        "bars 3/ ostinato hihat : r . . ./ ostinato right : s . . . ! 5 limb-conflict and in 2"
            + " more bars",
        "bars 2/ ostinato hihat : r . . ./ ostinato right : s . . . ! 5 limb-conflict and in 1"
            + " more bar",
      })
  void onceForEachLineAndLimb(String lines, String expected) {
    assertThat(
            String.join("/ ", told("tempo 200\ngroove g\n " + lines.replace("/ ", "\n ") + "\n")))
        .isEqualTo(expected);
  }

  /** What a limb is asked of at one instant is a clash and no speed. */
  @Test
  void aClashIsNoSpeed() {
    assertThat(told("tempo 110\ngroove g\n hihat : rr.. . . .\n right : s . . .\n"))
        .containsExactly("4 limb-conflict");
  }

  @Test
  void theWorstOfALineIsTold() {
    Diagnostic one =
        new Compiler(Loader.NONE)
            .compile(
                Path.of("a.tabor"),
                "tempo 200\ngroove g\n snare : rrr. . rrrrr rrr.\n",
                Options.NONE)
            .diagnostics()
            .get(0);
    // Five in a beat of 0.3 s.
    assertThat(one.message()).startsWith("the right hand plays 16.7 strokes per second from 3");
    assertThat(one.labels())
        .extracting(Diagnostic.Label::text)
        .containsExactly("the right hand on the snare at 3");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '!',
      value = {
        "accent snare ! ''",
        "bars 2 ! ''",
        "drop snare at 1 ! ''",
        // The same problem at a faster tempo is told where it came from; written anew it is not.
        "tempo 210 ! ''",
        "snare : rrrr . . . ! ''",
        "tempo 210/ snare : rrrr . . . ! 6 too-fast; the same at 1 more place",
        "tempo 190 ! ''",
        "add tom1 with right at 2 2e ! 5 too-fast",
      })
  void ofAStepWhatIsNew(String line, String expected) {
    String text =
        "tempo 200\ngroove g\n snare : rrrr . . .\nstep s\n " + line.replace("/ ", "\n ") + "\n";
    List<String> all = told(text);
    assertThat(all).startsWith("3 too-fast; the same at 1 more place");
    List<String> more = all.subList(1, all.size());
    if (expected.isEmpty()) {
      assertThat(more).isEmpty();
    } else {
      assertThat(more).singleElement().asString().startsWith(expected);
    }
  }

  /** A grace note sounds 27.5 ms before its place. */
  @Test
  void graceNotesWithoutTime() {
    // A thirty-second at 300 is 25 ms.
    Diagnostic none =
        new Compiler(Loader.NONE)
            .compile(
                Path.of("a.tabor"), "tempo 300\ngroove g\n hands : l'r...... . . .\n", Options.NONE)
            .diagnostics()
            .get(0);
    assertThat(none.code().word()).isEqualTo("no-free-hand");
    assertThat(none.message())
        .isEqualTo("the left hand has no time for the grace notes at 1.2: its last stroke is at 1");
  }

  /** 60 cm take 133 ms at the least. A sixteenth at tempo T lasts 15/T seconds. */
  @ParameterizedTest
  @CsvSource({
    // 156.25 ms, 27.5 less; 101.35 ms, 27.5 more.
    "96, x... . . ., .f.. . . ., 129",
    "148, f... . . ., .x.. . . ., 129",
  })
  void theWayToAndFromGraceNotes(int tempo, String floor, String snare, int millis) {
    Kit apart =
        Played.placed(
            Map.of("snare", new Position(30, -90, 75), "floor", new Position(30, 90, 75)));
    boolean first = floor.startsWith("f");
    Played played =
        new Played()
            .kit(apart)
            .tempo(tempo)
            .part(first ? Limb.RIGHT_HAND : Limb.LEFT_HAND, "floor", floor)
            .part(first ? Limb.LEFT_HAND : Limb.RIGHT_HAND, "snare", snare);
    assertThat(BodyChecks.check(played.groove()))
        .extracting(Diagnostic::message)
        .contains(
            "the left hand has "
                + millis
                + " ms from floor tom to snare at 1e: it needs 133 ms at the very least");
  }
}
