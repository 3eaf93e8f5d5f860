package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.groove.Groove;

/**
 * What makes a step deal its hands or feet anew: what they strike, when, with what ornaments, on
 * which kit and how fast (section 6 of the notation); how loud it is does not matter.
 */
class UnchangedTest {
  private static final String RIDE = "ride : x x x x | x . . ./ ";
  private static final String SNARE = "snare : . . x . | . . 'r ./ ";
  private static final String FEET = "kick : x . x . | . . . ./ hihat.foot : . x . x | . . . .";

  private static Groove groove(String lines) {
    String text = "groove g\n " + lines.replace("/ ", "\n ") + "\n";
    assertThat(Compact.problems(text)).as(text).isEmpty();
    return Compact.compile(text).lesson().grooves().get(0);
  }

  /** Whether the pair of limbs is asked the same by a section that comes from another. */
  @SuppressWarnings("NullAway") // a section's heading and file are not asked for here
  private static boolean isUnchanged(Groove base, Groove step, boolean hands) {
    SectionFrame frame =
        new SectionFrame("s", null, null, null, base, step.setting(), 0, null, false);
    SectionDraft draft = SectionDraft.empty(frame, step.bars(), Map.of()).with(step.written());
    return Unchanged.pair(frame, draft, hands);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "; true; true",
        "ride : x x x x -> ride : X x x (x); true; true",
        "tempo 91/; false; false",
        "on four-piece/; false; false",
        "kick : x . x . -> kick : x x . .; true; false",
        "kick : x . x . | . -> kick : x . x . | x; true; false",
        "kick : x . x . -> kick : l . x .; true; false",
        "hihat.foot : . x . x -> hihat.foot : . x . .; true; false",
        "| x . . ./ -> | x . . x/; false; true",
        "| x . . ./ -> | . . . ./; false; true",
        "| x . . ./ -> | . x . ./; false; true",
        "ride : -> tom1 :; false; true",
        "ride : x x x x -> ride : r x x x; false; true",
        "'r -> r; false; true",
        "'r -> ''r; false; true",
        "'r . -> 'r -; false; true",
        "'r -> 'l; false; true",
        // Plain strokes may last as they like.
        "x . | . -> x - | .; true; true",
      },
      quoteCharacter = '"')
  void asksTheSame(String change, boolean hands, boolean feet) {
    String base = RIDE + SNARE + FEET;
    String step = base;
    if (change != null && change.contains(" -> ")) {
      String[] both = change.split(" -> ", -1);
      step = base.replace(both[0], both[1]);
      assertThat(step).isNotEqualTo(base);
    } else if (change != null) {
      step = change + " " + base;
    }
    assertThat(isUnchanged(groove(base), groove(step), true)).as("hands").isEqualTo(hands);
    assertThat(isUnchanged(groove(base), groove(step), false)).as("feet").isEqualTo(feet);
    assertThat(isUnchanged(groove(step), groove(base), true)).as("hands back").isEqualTo(hands);
    assertThat(isUnchanged(groove(step), groove(base), false)).as("feet back").isEqualTo(feet);
  }

  @Test
  void ofAnotherNumberOfBarsAllIsAnew() {
    Groove one = groove("ride : x x x x/ kick : x . x .");
    Groove two = groove("ride : x x x x | . . . ./ kick : x . x . | . . . .");
    for (boolean hands : new boolean[] {true, false}) {
      assertThat(isUnchanged(one, two, hands)).isFalse();
      assertThat(isUnchanged(two, one, hands)).isFalse();
      assertThat(isUnchanged(two, two, hands)).isTrue();
    }
  }
}
