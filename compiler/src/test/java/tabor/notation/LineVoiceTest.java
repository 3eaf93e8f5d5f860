package tabor.notation;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Groove;
import tabor.resolve.Options;

/** A line over the whole body is one voice: read against the rules of docs/spelling.md. */
class LineVoiceTest {
  /** The last section of a lesson; a semicolon ends a line. */
  private static Groove last(String lines) {
    Loader alone = (user, written) -> Loader.Found.trouble(user, Loader.Trouble.MISSING);
    List<Groove> grooves =
        new Compiler(alone)
            .compile(Path.of("a.tabor"), lines.replace(';', '\n') + "\n", Options.NONE)
            .lesson()
            .grooves();
    return grooves.get(grooves.size() - 1);
  }

  private static String voice(Groove groove, Voice voice) {
    return Speller.spell(groove).bars().stream()
        .map(bar -> ScoreText.events(bar.events(voice)))
        .collect(Collectors.joining(" | "));
  }

  private static String sticking(Groove groove) {
    StringBuilder all = new StringBuilder();
    for (Bar bar : Speller.spell(groove).bars()) {
      for (Event event : bar.hands()) {
        event
            .chord()
            .ifPresent(chord -> all.append(chord.sticking().isEmpty() ? "." : chord.sticking()));
      }
    }
    return all.toString();
  }

  @ParameterizedTest
  @CsvSource({
    // Alone: one voice, with rests only where all are silent, and shared.
    "line : rlkr .k.l . k, 16(( 16-- 16-- 16)) r16+ 8( 16)< rq+ q, R?",
    // What is added goes into it: the hands', and a kick where it has some already.
    "line : rlkr lkrl r k;step b;add kick at 3&;add crash at 1, 16(( 16-- 16-- 16)) 16(( 16-- 16--"
        + " 16)) 8( 8) q, R?",
    // A foot that it does not use goes on below.
    "line : rk rk rk rk;left foot : x x x x, 8( 8) 8( 8) 8( 8) 8( 8), q q q q",
    "line : rk rk rk rk;step b;add hihat.foot at 2 4, 8( 8) 8( 8) 8( 8) 8( 8), rq q rq q",
    // Hands or the same foot in another part: two voices.
    "line : rk .k rk rk;ride : . x . ., q q q q, r8 8 r8 8 r8 8 r8 8",
    "line : r. rk r. r.;kick : x . x x, q q q q, q r8 8 q q",
    "line : rk rk rk rk;step b;hands : r r r r, q q q q, r8 8 r8 8 r8 8 r8 8",
    // For the feet alone: below.
    "line : kp kp kp kp, R?, 8( 8) 8( 8) 8( 8) 8( 8)",
  })
  void aLineIsOneVoiceWhereItCanBe(String lines, String hands, String feet) {
    Groove groove = last("groove a;" + lines);
    assertThat(voice(groove, Voice.HANDS)).isEqualTo(hands);
    assertThat(voice(groove, Voice.FEET)).isEqualTo(feet);
  }

  /** Bar by bar: a fill that is a line stands in a groove of two voices. */
  @Test
  void aFillIsALineByItself() {
    Groove groove =
        last(
            "groove a;hihat : x x x x|%;kick : x . x .|%;groove run;line : rk rk rk rk;"
                + "step b from a;fill run in bar 2");
    assertThat(voice(groove, Voice.HANDS)).isEqualTo("q q q q | 8( 8) 8( 8) 8( 8) 8( 8)");
    assertThat(voice(groove, Voice.FEET)).isEqualTo("q rq q rq | R?");
  }

  @Test
  void theFeetHaveTheirLettersInTheRow() {
    assertThat(sticking(last("groove a;line : rlkp b . . ."))).isEqualTo("RLKPB");
    assertThat(sticking(last("groove a;line : rlkp b . . .;left foot : . . x x"))).isEqualTo("RLB");
  }

  /** k is the foot on the kick for a left-handed player too. */
  @Test
  void lettersOfALeftHander() {
    String kit = "on mine;kit mine;left-handed;";
    assertThat(sticking(last(kit + "groove a;line : rlkp . . ."))).isEqualTo("LRKP");
  }
}
