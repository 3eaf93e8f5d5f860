package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.diagnostic.Diagnostic;

/**
 * Strokes for which there is no limb (section 6 of the notation): each is told once, where it is
 * new, with what keeps the limbs busy. A drummer has two hands and two feet.
 */
class StrokesWithoutLimbTest {
  private static final String HANDS = "groove g\n hands : . b . .\n";
  private static final String FEET = "groove g\n kick : x . . .\n hihat.foot : x . . .\n";

  private static List<String> told(String text) {
    return Compact.compile(text).diagnostics().stream()
        .filter(one -> one.code().word().startsWith("three-"))
        .map(one -> one.place().bar() + ":" + one.place().count() + " " + one.message())
        .toList();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "hihat : . x . .; 1:2 at 2 both hands are busy, and the hi-hat needs one more",
        "hihat : . x . . | . x . .; 1:2 at 2 both hands are busy, and the hi-hat needs one more",
      })
  void whichStrokeAndWhere(String part, String message) {
    String hands = part.contains("|") ? "groove g\n hands : . b . . | . b . .\n" : HANDS;
    assertThat(told(hands + " " + part + "\n")).startsWith(message);
  }

  @Test
  void theFeetAreTwoAsWell() {
    assertThat(told(FEET + " hihat.splash : x . . .\n"))
        .containsExactly("1:1 at 1 both feet are busy, and the foot splash needs one more");
    Diagnostic told = Compact.only(FEET + " hihat.splash : x . . .\n");
    assertThat(told.help())
        .isEqualTo(
            "leave one of the strokes at this place out, or move it; a drummer has two feet");
    assertThat(told.labels())
        .extracting(Diagnostic.Label::text)
        .containsExactly(
            "the right foot plays the kick here",
            "the left foot plays the hi-hat with the foot here");
    assertThat(told(HANDS + " feet : . b . .\n"))
        .as("hands and feet have nothing to do with each other")
        .isEmpty();
  }

  @Test
  void theLaterLineHasTheMark() {
    Diagnostic below = Compact.only(HANDS + " hihat : . x . .\n");
    assertThat(below.spot().span().start()).isEqualTo((HANDS + " hihat : . ").length());
    assertThat(below.labels())
        .extracting(Diagnostic.Label::text)
        .containsExactly(
            "the right hand plays the snare here", "the left hand plays the snare here");
    String above = "groove g\n hihat : . x . .\n";
    Diagnostic later = Compact.only(above + " hands : . b . .\n");
    assertThat(later.spot().span().start()).isEqualTo((above + " hands : . ").length());
    assertThat(later.labels())
        .extracting(Diagnostic.Label::text)
        .containsExactly("this stroke finds no limb");
  }

  /** What one line says of many bars is told once. */
  @ParameterizedTest
  @CsvSource({"1, ''", "2, '; the same in 1 more bar'", "4, '; the same in 3 more bars'"})
  void ofSeveralBarsTheFirstIsTold(int bars, String more) {
    assertThat(
            told(
                "groove g\n bars "
                    + bars
                    + "\n ostinato hands : . b . .\n ostinato ride : . x . .\n"))
        .containsExactly("1:2 at 2 both hands are busy, and the ride needs one more" + more);
  }

  /** A problem inherited from the section it came from is reported there only (section 8). */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "accent kick; ''",
        "bars 4; ''",
        "add tom1 at 2 in bar 2; 2:2 at 2 both hands are busy, and the first tom needs one more",
        "add tom1 at 2 in bar 1; 1:2 at 2 both hands are busy, and the first tom needs one more",
        "bars 4/ add tom1 at 2 in bar 3;"
            + " 3:2 at 2 both hands are busy, and the first tom needs one more",
        "bars 4/ add tom1 at 2 in bar 4;"
            + " 4:2 at 2 both hands are busy, and the first tom needs one more",
        "hihat.foot : . x . . | . . . ./ hihat.splash : . x . . | . . . .;"
            + " 1:2 at 2 both feet are busy, and the foot splash needs one more",
        "add tom1 at 3 in bar 1; ''",
        // Another place of the bar where something is told already, another surface at that place.
        "hands : . b b . | . b . ./ add ride at 3 in bar 1;"
            + " 1:3 at 3 both hands are busy, and the ride needs one more",
        "add crash at 2 in bar 2; 2:2 at 2 both hands are busy, and the crash needs one more",
        "add floor at 2 in bar 2; 2:2 at 2 both hands are busy, and the floor tom needs one more",
        "add ride at 2 in bar 2; 2:2 at 2 both hands are busy, and the ride needs one more",
      })
  void ofAStepOnlyWhatIsNew(String lines, String message) {
    String base =
        "groove g\n hands : . b . . | . b . .\n hihat : . x . . | . x . .\n"
            + " kick : x x . . | x . . .\nstep s\n ";
    List<String> before = told(base + "accent kick\n");
    assertThat(before).hasSize(2);
    List<String> all = told(base + lines.replace("/ ", "\n ") + "\n");
    assertThat(all.subList(2, all.size()))
        .isEqualTo(message.isEmpty() ? List.of() : List.of(message));
  }
}
