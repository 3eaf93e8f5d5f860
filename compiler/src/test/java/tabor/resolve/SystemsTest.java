package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiled;
import tabor.groove.Groove;
import tabor.source.LineIndex;

/**
 * Parts over several systems (section 3 of the notation): the parts after {@code next} write the
 * bars that follow; a part that is left out of a system is silent there, and {@code %} after that
 * repeats silence.
 */
class SystemsTest {
  private static String text(String lines) {
    return "groove g\n " + lines.replace("/ ", "\n ") + "\n";
  }

  private static Groove groove(String lines) {
    return Compact.compile(text(lines)).lesson().grooves().get(0);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "kick : x . . ./ next/ kick : . x . .; 0 rf kick | 1/4 rf kick",
        "kick : x . . . | . x . ./ next/ kick : . . x .; 0 rf kick | 1/4 rf kick | 1/2 rf kick",
        // Left out of a system.
        "kick : x . . ./ hands : r . . ./ next/ hands : l . . .;"
            + " 0 R snare, 0 rf kick | 0 L snare",
        "hands : r . . ./ next/ hands : l . . ./ kick : x . . .;"
            + " 0 R snare | 0 L snare, 0 rf kick",
        "kick : x . . ./ hands : r . . ./ next/ hands : l . . ./ next/ kick : . x . .;"
            + " 0 R snare, 0 rf kick | 0 L snare | 1/4 rf kick",
        // A repeat takes the bar before, in this system or in the one before.
        "kick : x . . ./ next/ kick : %; 0 rf kick | 0 rf kick",
        "kick : x . . . | . x . ./ next/ kick : % | %;"
            + " 0 rf kick | 1/4 rf kick | 1/4 rf kick | 1/4 rf kick",
        "kick : x . . ./ hands : r . . ./ next/ hands : l . . ./ next/ kick : %;"
            + " 0 R snare, 0 rf kick | 0 L snare",
        "hands : r . . ./ next/ hands : % | . . . ./ kick : % | x . . .;"
            + " 0 R snare | 0 R snare | 0 rf kick",
        // Two parts of one name are the first and the second in each system.
        "kick : x . . ./ kick : . . x ./ next/ kick : %/ kick : . . . x;"
            + " 0 rf kick, 1/2 rf kick | 0 rf kick, 3/4 rf kick",
        "kick : x . . ./ kick : . . x ./ next/ kick : . x . ./ kick : %;"
            + " 0 rf kick, 1/2 rf kick | 1/4 rf kick, 1/2 rf kick",
        // An ostinato goes through.
        "hands : r . . ./ ostinato kick : x . . ./ next/ hands : l . . .;"
            + " 0 R snare, 0 rf kick | 0 L snare, 0 rf kick",
        "pickup 1 beat/ kick : x | . x . ./ next/ kick : %;"
            + " 3/4 rf kick | 1/4 rf kick | 1/4 rf kick",
        "bars 4/ ostinato kick : x . . . | . x . . | . . x .;"
            + " 0 rf kick | 1/4 rf kick | 1/2 rf kick | 0 rf kick",
        "time 4/4 3/4/ ostinato kick : x . . . | . x . | % | %;"
            + " 0 rf kick | 1/4 rf kick | 0 rf kick | 1/4 rf kick",
        // Of bars of several meters the latest of the same meter is repeated, silent or not.
        "time 4/4 3/4/ kick : x . . . | . x ./ next/ hands : l . . ./ next/ kick : %;"
            + " 0 rf kick | 1/4 rf kick | 0 L snare | 1/4 rf kick",
        "time 4/4 3/4/ kick : x . . . | . x ./ next/ hands : l . . ./ next/ kick : % | %;"
            + " 0 rf kick | 1/4 rf kick | 0 L snare | 1/4 rf kick",
      })
  void barsFollowOneAnother(String lines, String strokes) {
    assertThat(Compact.last(text(lines))).isEqualTo(strokes);
  }

  /** A stroke goes on into the next system; after a silent one there is nothing to go on. */
  @Test
  void holdsGoOnInTheNextSystem() {
    assertThat(lengths("ride : . . . r/ next/ ride : - - . .")).isEqualTo("3/4");
    assertThat(lengths("ride : . . . r/ next/ ride : - l . .")).isEqualTo("1/2 1/4");
    assertThat(lengths("ride : r . . ./ next/ ride : % | . . . r/ next/ ride : - . . ."))
        .isEqualTo("1/4 1/4 1/2");
    String silent = "ride : . . . r/ kick : x . . ./ next/ kick : x . . ./ next/ ride : - . . .";
    assertThat(Compact.problems(text(silent))).containsExactly("7 nothing-there");
    assertThat(Compact.problems(text("ride : . . . ./ next/ ride : - . . .")))
        .containsExactly("4 nothing-there");
  }

  @ParameterizedTest
  @CsvSource({"x . . . | . x .", "x . . | . x . .", "x . . | . x .", "x . . | . x . . . | . x . ."})
  void eachWrongBarOfAnOstinatoIsToldOnce(String bars) {
    long wrong = Arrays.stream(bars.split(" \\| ", -1)).filter(bar -> bar.length() != 7).count();
    assertThat(Compact.problems(text("bars 6/ ostinato kick : " + bars)))
        .hasSize((int) wrong)
        .containsOnly("3 bar-length");
  }

  @Test
  void aHoldAfterASilentBarHasNothingToGoOn() {
    String lines =
        "time 4/4 3/4/ ride : r . . ./ kick : x . . ./ next/ kick : x . ./ next/"
            + " ride : . . . r | % | - . . .";
    assertThat(Compact.problems(text(lines))).containsExactly("8 nothing-there");
  }

  /** A stroke stands where it is written, one of a repeat where the bar before is. */
  @Test
  void strokesStandWhereTheyAreWritten() {
    String text = text("kick : x . . ./ next/ kick : % | . x . . | %/ next/ kick : % | . . x .");
    Compiled compiled = Compact.compile(text);
    LineIndex lines = new LineIndex(text);
    assertThat(
            compiled.lesson().grooves().get(0).strokes().stream()
                .map(stroke -> lines.lineOf(compiled.span(stroke.spot()).start()) + 1))
        .containsExactly(2, 2, 4, 4, 4, 6);
  }

  /** Two parts of the hands are dealt as if one part had the strokes of both. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        ".x .x .x .x; x. x. x. x.",
        "x. x. x. x.; .x .x .x .x",
        ".. .. xx xx; xx xx .. ..",
        "x. .x x. .x; .x x. .x x.",
      })
  void twoPartsOfTheHands(String one, String two) {
    assertThat(Compact.lastOfFine(text("hands : " + one + "/ hands : " + two)))
        .isEqualTo(Compact.lastOfFine(text("hands : rl rl rl rl")));
  }

  private static String lengths(String lines) {
    return groove(lines).strokes().stream()
        .map(stroke -> stroke.length().toString())
        .collect(Collectors.joining(" "));
  }

  /** A bar is a repeat on the page where every part that writes it says so. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "kick : x . . . | %; 2",
        "kick : x . . . | . x . .; ''",
        "kick : x . . . | %/ hands : r . . . | %; 2",
        "kick : x . . . | %/ hands : r . . . | . l . .; ''",
        "kick : x . . . | % | . x . . | %; 2 4",
        "kick : x . . ./ next/ kick : %; 2",
      })
  void barsThatAreRepeats(String lines, String bars) {
    Set<Integer> repeats = groove(lines).repeats();
    assertThat(repeats.stream().sorted().map(String::valueOf).collect(Collectors.joining(" ")))
        .isEqualTo(bars);
  }

  /** An edit that makes a bar different makes it no repeat; one that changes both leaves it. */
  @ParameterizedTest
  @CsvSource({
    "accent kick at 1 in bar 2, ''",
    "accent kick, 2",
    "add kick at 2 in bar 2, ''",
    "drop kick at 1 in bar 2, ''",
    "move kick from 1 to 2 in bar 2, ''",
    "roll hands in bar 2, ''",
    "right plays tom1 in bar 2, ''",
    "right plays tom1, 2",
    "swap hands, 2",
    "bars 1, ''",
    "bars 4, 2",
  })
  void editsOfARepeat(String line, String bars) {
    Groove step =
        Compact.compile(text("kick : x . . . | %/ hands : r . l . | %") + "step s\n " + line + "\n")
            .lesson()
            .grooves()
            .get(1);
    assertThat(
            step.repeats().stream().sorted().map(String::valueOf).collect(Collectors.joining(" ")))
        .isEqualTo(bars);
  }
}
