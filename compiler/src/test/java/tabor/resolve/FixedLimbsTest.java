package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import tabor.diagnostic.Diagnostic;

/** Which strokes stay open, and what fixes them. */
class FixedLimbsTest {
  private static final String BACK = "groove g\n snare : . x . x\n";

  @Test
  void aHiHatThatJoinsLaterTakesTheRightHand() {
    assertThat(Compact.last(BACK)).isEqualTo("1/4 R snare, 3/4 R snare");
    assertThat(Compact.last(BACK + "step s\n hihat : x x x x\n"))
        .isEqualTo("0 R hihat, 1/4 R hihat, 1/4 L snare, 1/2 R hihat, 3/4 R hihat, 3/4 L snare");
  }

  @Test
  void whatALimbChoseKeepsTheLimb() {
    assertThat(Compact.last(BACK + "step s\n accent right\nstep t\n hihat : x x x x\n"))
        .contains("1/4 R snare>", "3/4 R snare>", "1/4 L hihat");
    assertThat(Compact.last(BACK + "step s\n accent hands\nstep t\n hihat : x x x x\n"))
        .contains("1/4 L snare>", "3/4 L snare>");
    assertThat(Compact.last(BACK + "step s\n accent snare\nstep t\n hihat : x x x x\n"))
        .contains("1/4 L snare>");
  }

  @Test
  void whatFollowsReadIsFixedToo() {
    assertThat(Compact.last(BACK + "step s\n kick follows right\nstep t\n hihat : x x x x\n"))
        .contains("1/4 R snare", "1/4 rf kick", "1/4 L hihat");
  }

  @Test
  void addWithGivesAnOpenStrokeItsLimb() {
    assertThat(Compact.last(BACK + " add snare with left at 2\n")).startsWith("1/4 L snare");
    assertThat(Compact.last(BACK + " add snare with left at 2\nstep s\n right : . s . .\n"))
        .startsWith("1/4 R snare, 1/4 L snare");
  }

  @Test
  void handsPlayMovesBothAndTwoAtOncePlaceStayTwo() {
    assertThat(
            Compact.last(
                "groove g\n hihat : x x x x\n snare : . x . x\nstep s\n hands plays tom1 at 2\n"))
        .contains("1/4 R tom1, 1/4 L tom1");
  }

  @Test
  void eitherHandKeepsLimbAndSurface() {
    assertThat(Compact.last("groove g\n right plays ride\n hands : x . x .\n"))
        .isEqualTo(
            Compact.last(
                "groove g\n right plays ride\n hands : x . x .\nstep s\n text \"same\"\n"));
  }

  @Test
  void aStrokeWithoutALimbIsToldOnceAndALaterStepMayCureIt() {
    String three = "groove g\n right : c . . .\n left : s . . .\n tom1 : x . . .\n";
    assertThat(Compact.problems(three + "step s\n kick : x . . .\n"))
        .containsExactly("4 three-hands");
    assertThat(Compact.problems(three + "step s\n drop crash\n")).containsExactly("4 three-hands");
    assertThat(Compact.last(three + "step s\n drop crash\n")).isEqualTo("0 R tom1, 0 L snare");
  }

  @Test
  void anOstinatoWithoutALimbIsToldOnce() {
    String text =
        "groove g\n bars 8\n ostinato right : c . . .\n ostinato left : s . . .\n"
            + " ostinato tom1 : x . . .\n";
    assertThat(Compact.problems(text)).containsExactly("5 three-hands");
    assertThat(Compact.compile(text).diagnostics().get(0).message())
        .endsWith("; the same in 7 more bars");
  }

  /** The snare may go right or left; among equals it stays as it was in the section before. */
  @Test
  void aLineThatSpeaksOfAHandDealsNothingForGood() {
    String base = "groove base\n right : d d . .\n snare : x . . .\nstep s\n drop ride at 1\n";
    String busy = " add tom1 with left at 1\n";
    String free = " drop tom1 at 1\n";
    assertThat(Compact.lastOfFine(base)).isEqualTo("0 L snare, 1/4 R ride");
    assertThat(Compact.lastOfFine(base + busy + free)).isEqualTo("0 L snare, 1/4 R ride");
    assertThat(Compact.lastOfFine(base + busy + " accent right at 2\n"))
        .as("the left hand is busy")
        .isEqualTo("0 R snare, 0 L tom1, 1/4 R ride>");
    assertThat(Compact.lastOfFine(base + busy + " accent right at 2\n" + free))
        .as("it was busy for a moment only")
        .isEqualTo("0 L snare, 1/4 R ride>");
    assertThat(Compact.lastOfFine(base + busy + " accent right at 2\nstep t\n" + free))
        .as("the step before has it on the right")
        .isEqualTo("0 R snare, 1/4 R ride>");
  }

  @Test
  void whatAStepAddsWasNowhereBefore() {
    String base = "groove base\n right : . d . .\nstep s\n";
    String add = " add snare at 1\n";
    String free = " drop tom1 at 1\n";
    String first = Compact.lastOfFine(base + add);
    assertThat(
            Compact.lastOfFine(
                base + add + " add tom1 with right at 1\n accent right at 2\n" + free))
        .isEqualTo(first.replace("ride", "ride>"));
  }

  @Test
  void whereAStrokeHasNoLimbNothingElseIsMissed() {
    String three = "groove g\n right : c . . .\n left : s . . .\n tom1 : x . . .\n";
    assertThat(Compact.problems(three + "step s\n accent kick at 2\n"))
        .containsExactly("4 three-hands");
  }

  /** A problem of any bar of the section before is told there, in a longer section too. */
  @Test
  void aStepThatGoesOnTellsNothingAgain() {
    for (String bars :
        new String[] {
          "right : c . . . | . . . . | . . . .\n left : s . . . | . . . . | . . . .\n"
              + " tom1 : x . . . | . . . . | . . . .\n",
          "right : . . . . | c . . . | . . . .\n left : . . . . | s . . . | . . . .\n"
              + " tom1 : . . . . | x . . . | . . . .\n",
          "right : . . . . | . . . . | c . . .\n left : . . . . | . . . . | s . . .\n"
              + " tom1 : . . . . | . . . . | x . . .\n",
        }) {
      String base = "groove g\n " + bars;
      assertThat(Compact.problems(base + "step s\n add kick at 3\n"))
          .containsExactly("4 three-hands");
      assertThat(Compact.problems(base + "step s\n bars 7\n")).containsExactly("4 three-hands");
    }
  }

  @Test
  void eitherHandNeedsAFreeOne() {
    String busy = " bars 3\n ostinato right : c . . .\n ostinato left : s . . .\n";
    String either = " ostinato hands : x . . .\n";
    Diagnostic told = Compact.only("groove g\n" + busy + either);
    assertThat(told.code().word()).isEqualTo("three-hands");
    assertThat(told.message()).isEqualTo("at 1 both hands are busy, and the snare needs one more");
    assertThat(told.spot().text()).isEqualTo("x");
    assertThat(told.labels()).hasSize(2);
    assertThat(Compact.problems("groove g\n" + busy + either + "step s\n accent kick at 2\n"))
        .as("nothing is missed where something could not be played")
        .containsExactly("5 three-hands");
    assertThat(Compact.last("groove g\n right : c . . .\n left : s . . .\n hands : x x . .\n"))
        .as("the others are played")
        .startsWith("0 R crash, 0 L snare, 1/4 ");
  }
}
