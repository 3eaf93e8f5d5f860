package tabor.body;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.diagnostic.Severity;
import tabor.resolve.Options;

/**
 * Hands of rows of strokes and of short fills, worked out by the rules of docs/body.md: R and L for
 * each place where a hand strikes, B where both do.
 */
class RowsAndFillsTest {
  private static String hands(String lines) {
    String source = "groove g\n " + lines.replace("/ ", "\n ") + "\n";
    Compiled compiled = new Compiler(Loader.NONE).compile(Path.of("t.tabor"), source, Options.NONE);
    assertThat(compiled.diagnostics()).as(source).noneMatch(d -> d.severity() == Severity.ERROR);
    return HandsTest.hands(compiled.lesson().grooves().get(0), new ArrayList<>());
  }

  /**
   * Where even time leaves out a place and two strokes come from there on at twice its pace, the
   * right has gone along; anything less is played against the time, by the left.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "ride : xx xx xx .x/ snare : . . . xx..; RRRRRR RL R",
        "ride : xx xx xx .x/ snare : . . . x...; RRRRRR L R",
        "ride : xx xx xx .x/ snare : . . . .x..; RRRRRR L R",
        "ride : xx xx xx .x/ snare : . . . x.x.; RRRRRR L B",
        "ride : xx xx xx .x/ snare : . . . xxx.....; RRRRRR RLR R",
        "ride : xx .x xx xx/ snare : . xx.. . .; RR RL R RRRR",
        "ride : .x xx xx xx/ snare : xx.. . . .; RL R RRRRRR",
        "ride : xx xx xx xx | xx .x xx xx/ snare : . x . x | . xx.. . x;"
            + " RRBRRRBR RR RL R RRBR",
        "ride : xxx xxx xxx ..x/ snare : . . . xx....; RRRRRRRRR RL R",
        "ride : xxx xxx xxx ..x/ snare : . . . xx.; RRRRRRRRR LL R",
        "time 6/8/ ride : xxx x../ snare : . .xx; RRRR LL",
        "time 6/8/ ride : xxx x../ snare : . ..xxxx; RRRR RLRL",
        // Where the time has stopped for longer than a beat, the hand is free anyway.
        "ride : xx xx x. ../ snare : . . . xx..; RRRRR RL",
      })
  void aShortFill(String lines, String hands) {
    assertThat(hands(lines)).isEqualTo(hands.replace(" ", ""));
  }

  /** The hands take turns as if every place were struck; a written hand leads. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "snare : xx xx xx xx; RLRLRLRL",
        "snare : x.xx xx.x .xxx xxxx; RRL RLL LRL RLRL",
        "snare : lx xx xx xx; LRLRLRLR",
        "snare : xr xx xx xx; RRLRLRLR",
        // After a beat without a stroke the written hand leads no longer.
        "snare : lx .x xx xx; LR L RLRL",
        "snare : lx x. xx xx; LR L RLRL",
        // Both hands at once lead nobody.
        "snare : lx xx xx xx/ tom1 : r. .. .. ..; BLRLRLRL",
        "snare : xx lx xx xx/ tom1 : .. r. .. ..; RLBLRLRL",
        "snare : xx xx xx xl/ tom1 : .. .. .. .r; RLRLRLRB",
        // The pair's own part goes on over gaps of any length.
        "hands : x x x x; RLRL",
        "hands : x . . x; RL",
        "hands : xx .. .. xx; RL RL",
        // Rows go on over the bar line; places are counted from where the row begins.
        "time 3/4/ snare : xxx xxx xxx | xxx xxx xxx; RLRLRLRLR LRLRLRLRL",
        "time 3/4/ snare : xxx xxx xxx | xxx xxx xxx | xxx xxx xxx | xxx xxx xxx;"
            + " RLRLRLRLR LRLRLRLRL RLRLRLRLR LRLRLRLRL",
        "time 4/4 3/4/ snare : xxx xxx xxx xxx | xxx xxx xxx | xxx xxx xxx xxx | xxx xxx xxx;"
            + " RLRLRLRLRLRL RLRLRLRLR LRLRLRLRLRLR LRLRLRLRL",
        "tempo 160/ time 7/8 in 2+2+3/ snare : xx xx xxx | xx xx xxx; RLRLRLR LRLRLRL",
        "tempo 160/ time 7/8 in 2+2+3/ snare : xx xx xxx | .x xx xxx | xx x. x.x | xx xx xxx;"
            + " RLRLRLR RLRLRL RLRRR LRLRLRL",
        "pickup 1 beat/ snare : xx | xx xx xx xx; RL RLRLRLRL",
        "pickup 1 beat/ snare : .x | xx xx xx xx | .x xx xx xx; L RLRLRLRL LRLRLRL",
        "time 3/4 4/4/ pickup 2 beats/ snare : xxx xxx | xxx xxx xxx | xxx xxx xxx xxx;"
            + " RLRLRL RLRLRLRLR LRLRLRLRLRLR",
        // By threes, each figure begins with the same hand if the feet take what the hands leave.
        "snare : xx. xx. xx. xx./ kick : ..x ..x ..x ..x; RLRLRLRL",
        "snare : xx. xx. xx. xx.; RLLRRLLR",
        "snare : xx. xx. xx. xx./ kick : ..x ... ..x ..x; RLLRRLLR",
        "snare : xx.x x.xx .xx. xx.x/ kick : ..x. .x.. x..x ..x.; RLLRRLLRRLL",
      })
  void aRow(String lines, String hands) {
    assertThat(hands(lines)).isEqualTo(hands.replace(" ", ""));
  }
}
