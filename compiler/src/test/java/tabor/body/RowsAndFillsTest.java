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
        // Two of three gaps make the time even; long and short ones in turn do not.
        "ride : xx .x xx .x/ snare : . xx.. . xx..; RR RLR RR RLR",
        "tempo 90/ ride : x.x x.x x.x x.x/ snare : . . . ..xx..; RR RR RR RLLR",
        // The time that is written for the left leaves the right hand free.
        "hihat : l l l l/ snare : .x .. .x ..; LRL LRL",
        "hihat : l x l x/ snare : .x .x .x .x; LRLRLRLR",
        "hihat : x l x l/ snare : .x .x .x .x; LRLRLRLR",
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
        "snare : xl xx xx xx/ tom1 : .r .. .. ..; RBRLRLRL",
        "snare : xx xx xx xr; RLRLRLRR",
        // A gap that is shorter than a beat lets the written hand lead on.
        "snare : lx.x xxxx . .; LR R LRLR",
        "hands : l x x x; LRLR",
        // A row goes on over a beat; after more the right begins again.
        "snare : x xxx . .; R LRL",
        "snare : xxx . . xxx; RLR RLR",
        // A beat has as many places as its neighbours divide it into.
        "snare : xxx x xx xx; RLR L RL RL",
        // The hands' own part goes by itself, whatever else is open.
        "hands : x x x x/ tom1 : x . . .; BLRL",
        "hands : x x x x/ floor : . .x . .; RLRRL",
        "hands : . .x . ./ tom1 : xxx . xxx .; RLR L RLR",
        // The right leads where nothing hurries: on its own, in quarters, in places of 0.6 seconds.
        "snare : . .x . .; R",
        "tempo 140/ snare : x x x x; RRRR",
        "tempo 50/ snare : xx xx xx xx; RRRRRRRR",
        "tempo 51/ snare : xx xx xx xx; RLRLRLRL",
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
        "snare : xx.x x.xx .xx. xx../ kick : ..x. .x.. x..x ....; RLLRRLLRRL",
        "snare : xx. xx. xx. x../ kick : ..x ..x ..x .xx; RLLRRLL",
        "snare : lx. xx. xx. xx./ tom1 : r.. ... ... .../ kick : ..x ..x ..x ..x; BLRLRLRL",
        "tempo 60/ snare : xx...x x...xx ...xx. ..xx../ kick : ..xxx. .xxx.. xxx..x xx....;"
            + " RLRLRLRLRL",
      })
  void aRow(String lines, String hands) {
    assertThat(hands(lines)).isEqualTo(hands.replace(" ", ""));
  }

  /** The time is kept by one hand, the right, as long as it can; a tom keeps it as well. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "floor : xx xx xx xx/ snare : . x . x; RRBRRRBR",
        "floor : x x x x/ snare : .x .. .x ..; RLRRLR",
        "floor : xx xx xx xx/ tom1 : . x . x; RRBRRRBR",
        "floor : xx xx .. ../ snare : . x . .; RRBR",
        "floor : .. xx xx xx/ snare : . . x .; RRBRRR",
        "floor : x . xx ./ snare : . . x .; RBL",
        "floor : xx x. .. ../ snare : . x . .; RLB",
        "floor : xx xx xx xx; RLRLRLRL",
        "floor : .x .x .x .x/ snare : x . x .; RLLRLL",
        "floor : xx xx xx xx/ crash : x . . .; BLRLRLRL",
        "floor : xx xx xx xx/ snare : . x . x/ crash : x . . .; BRBRRRBR",
        "floor : xx xx xx xx/ snare : x . . .; BRRRRRRR",
        "floor : xx xx xx xx/ snare : . . . .x; RRRRRRRB",
        "floor : x x x x/ snare : .xx . .xx .; RLLRRLLR",
        // Three strokes are a row if they go round the bar.
        "time 3/4/ tempo 90/ floor : x x x/ snare : .xx .xx .xx; RLLRLLRLL",
        "tempo 90/ floor : x x x ./ snare : .xx .xx .xx .; RLRLRLRLR",
        // Of two drums, the one further right.
        "tom1 : x x x x/ tom2 : xx xx xx xx; BRBRBRBR",
        "floor : xx xx xx xx/ hihat : x . x .; BLLLBLLL",
        "tempo 105/ floor : xxxx xxxx xxxx xxxx/ snare : . x . x; RRRRBRRRRRRRBRRR",
        "tempo 120/ floor : xxxx xxxx xxxx xxxx/ snare : . x . x; RLRLBLRLRLRLBLRL",
        // Of two pieces that meet now and then, the one further right.
        "ride : x. xx x. xx/ hihat : .x x. .x x.; RLBRRLBR",
        // More than 7 a second go to both hands.
        "tempo 105/ hihat : xxxx xxxx xxxx xxxx; RRRRRRRRRRRRRRRR",
        "tempo 106/ hihat : xxxx xxxx xxxx xxxx; RLRLRLRLRLRLRLRL",
        // Up to four in a row stay with one hand up to 9 a second.
        "tempo 130/ hihat : x xxx. x x; RRRRRR",
        "tempo 140/ hihat : x xxx. x x; RRLRRR",
        "tempo 130/ hihat : x xxxx . x; RRRRRR",
        "tempo 130/ hihat : x xxxx x x; RRLRLRR",
        "tempo 135/ hihat : x xxxx . x; RRRRRR",
        "tempo 136/ hihat : x xxxx . x; RRLRLR",
        // Where it leaves out what the snare takes, from 5 a second on.
        "tempo 75/ hihat : xxxx .xxx xxxx .xxx/ snare : . x . x; RRRRLRRRRRRRLRRR",
        "tempo 80/ hihat : xxxx .xxx xxxx .xxx/ snare : . x . x; RLRLRLRLRLRLRLRL",
        "tempo 80/ hihat : xxxx xxxx xxxx xxxx/ snare : . x . x; RRRRBRRRRRRRBRRR",
        "tempo 80/ hihat : xx.x xx.x xx.x xx.x/ snare : ..x. ..x. ..x. ..x.; RLRLRLRLRLRLRLRL",
        "tempo 80/ hihat : .xxx xxxx .xxx xxx./ snare : x . x ...x; RLRLRLRLRLRLRLRL",
        "tempo 80/ hihat : .xxx xxxx .xxx xxx./ snare : x . x .; RLRLRLRLRLRLRLR",
        "tempo 80/ hihat : .xxx xxxx xxxx xxxx/ snare : x . . .; RLRLRLRLRLRLRLRL",
        "tempo 80/ hihat : xxxx .xxx xxxx xx../ snare : . x . ..x.; RLRLRLRLRLRLRLR",
        "tempo 80/ hihat : xxxx .xxx xxxx xxxx/ crash : . x . .; RLRLRLRLRLRLRLRL",
        // Not just those places: one hand goes on, and the other plays the snare.
        "tempo 80/ hihat : xxxx .xxx xxxx xxxx/ snare : . x . x; RRRRLRRRRRRRBRRR",
        "tempo 80/ hihat : xxx. . . ./ snare : ...x . . .; RRRL",
        "tempo 80/ hihat : xxxx .xxx xxxx .xxx/ snare : . x . x/ crash : x . . .;"
            + " BLRLRLRLRLRLRLRL",
      })
  void theTime(String lines, String hands) {
    assertThat(hands(lines)).isEqualTo(hands.replace(" ", ""));
  }

  /** Three kicks or more that are faster than 9 a second take both feet, up to 18 a second. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "tempo 150/ kick : xxxx . . .; RLRL",
        "tempo 150/ kick : xxx. . . .; RLR",
        "tempo 150/ kick : xx.. . . .; RR",
        "tempo 150/ kick : .xxx . . .; LRL",
        "tempo 150/ kick : xxxx xx.. xxx. .; RLRLRLRLR",
        "tempo 150/ kick : . xx.. xxxx .; RRRLRL",
        "tempo 150/ kick : . . . xxxx; RLRL",
        "tempo 130/ kick : xxxx . . .; RRRR",
        "tempo 135/ kick : xxxx . . .; RRRR",
        "tempo 135/ kick : xxxxxxxx . . .; RLRLRLRL",
        "tempo 150/ kick : xxxxxxxx . . .; RRRRRRRR",
        "tempo 150/ kick : xx.x x... . ./ hihat.foot : ..x. . . .; RRLRR",
        "tempo 150/ kick : xxxx . . ./ hihat.foot : . x . x; RLRLLL",
        "tempo 90/ kick : xx xx xx xx; RRRRRRRR",
      })
  void kicks(String lines, String feet) {
    String source = "groove g\n " + lines.replace("/ ", "\n ") + "\n";
    Compiled compiled = new Compiler(Loader.NONE).compile(Path.of("t.tabor"), source, Options.NONE);
    StringBuilder letters = new StringBuilder();
    compiled
        .lesson()
        .grooves()
        .get(0)
        .strokes()
        .forEach(stroke -> letters.append(stroke.limb().letter()));
    assertThat(letters.toString()).isEqualTo(feet);
  }
}
