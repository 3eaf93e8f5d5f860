package tabor.emit.practice;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.emit.grid.Sticking;
import tabor.groove.Lesson;
import tabor.resolve.Options;

class PracticeTextTest {
  private static final String SOURCE =
      """
      title "Three steps"
      tempo 60
      groove pad "On the pad"
        hands : rlrr lrll rlrl rlrl
      step feet "The feet"
        add kick at 1 3
        add hihat.foot at 2
      step far "A long way"
        right plays floor at 4
        right plays hihat at 4&
      """;

  private static Lesson lesson(String source) {
    return new Compiler(Loader.NONE).compile(Path.of("three.tabor"), source, Options.NONE).lesson();
  }

  /**
   * By hand: of rl rl rl rl the right hand has a stroke each eighth, so three in a quarter: two
   * steps in 2/7 s make 210 quarters a minute, in 2/10 s 300. The paradiddle's doubles are in the
   * way: r . r r is three right strokes within three sixteenths, which 2/7 s hold at 157.5 and 2/10
   * s at 225.
   */
  @Test
  void theFastestTempoAndWhatSetsIt() {
    Lesson lesson = lesson(SOURCE);
    assertThat(FastestText.limit(lesson.grooves().get(0)))
        .isEqualTo("top tempo: comfortable 157, extreme 225, set by the right hand from 1 to 1a");
    Lesson singles = lesson("groove a\n hands : rlrl rlrl rlrl rlrl\n");
    assertThat(FastestText.limit(singles.grooves().get(0)))
        .isEqualTo("top tempo: comfortable 210, extreme 300, set by the right hand from 1 to 2");
    Lesson feet = lesson("time 2/4\ngroove a\n kick : xx xx\n");
    assertThat(FastestText.limit(feet.grooves().get(0)))
        .isEqualTo("top tempo: comfortable 210, extreme 270, set by the right foot from 1 to 2");
    Lesson slow = lesson("groove a\n kick : . . . .\n");
    assertThat(FastestText.limit(slow.grooves().get(0))).startsWith("no top tempo");
  }

  /** Floor tom to hi-hat: 45 32 65 and -39 39 85, so 86.6 cm; an eighth of it at 300 cm/s. */
  @Test
  void theWayOfAHand() {
    assertThat(FastestText.limit(lesson(SOURCE).grooves().get(2)))
        .contains("comfortable 103", "(floor tom to hi-hat)");
  }

  @Test
  void whatALimitMeansIsSaid() {
    Lesson lesson = lesson(SOURCE);
    assertThat(FastestText.of(lesson, lesson.grooves().subList(1, 2)))
        .startsWith("2. The feet (feet), quarter = 60\n   top tempo: comfortable 157")
        .contains("7 to 10 strokes per second of a hand", "A student's own top tempo is lower")
        .doesNotContain("can play");
    assertThat(FastestText.of(lesson, lesson.grooves()).replace('\n', ' '))
        .contains(
            "Stop if something hurts, tingles or rings. Local rules and the advice of a doctor,"
                + " audiologist or other licensed professional come first.");
  }

  @Test
  void aLimitOfOnesOwn() {
    Lesson lesson = lesson("limits hands 4 to 5\n" + SOURCE);
    assertThat(FastestText.limit(lesson.grooves().get(0))).contains("comfortable 90, extreme 112");
  }

  @Test
  void theTableOfSteps() {
    assertThat(StepsTable.text(lesson(SOURCE)))
        .startsWith(
            """
            Three steps

               step  tempo         hardest limb        RH   LH   RF   LF  limbs  together  changed
            1  pad   quarter = 60  right hand   38 %  2.0  2.0    -    -      2         0        -
               On the pad
            2  feet  quarter = 60  right hand   38 %  2.0  2.0  0.5  0.3      4         3        3
               The feet
               - kick: added on 1 and 3
               - hi-hat with the foot: added on 2
            3  far   quarter = 60  right hand   58 %  2.0  2.0  0.5  0.3      4         3        2
               A long way
               - right hand: to the floor tom on 4, to the hi-hat on 4&
            """);
    assertThat(StepsTable.tsv(lesson(SOURCE)).lines().skip(2).findFirst())
        .contains(
            "2\tfeet\tThe feet\tkick: added on 1 and 3; hi-hat with the foot: added on 2"
                + "\tquarter = 60\tright hand\t38\t2.0\t2.0\t0.5\t0.3\t4\t3\t3");
  }

  @Test
  void theSticking() {
    Lesson lesson = lesson(SOURCE);
    assertThat(Sticking.of(lesson, lesson.grooves().subList(1, 2)))
        .isEqualTo(
            """
            2. The feet (feet)
            bar 1    1 e & a  2 e & a  3 e & a  4 e & a
            hands    R L R R  L R L L  R L R L  R L R L
            feet     R        L        R
               beats 1 to 2: paradiddle
               beats 3 to 4: single-stroke-roll
               Tabor chose: kick to the right foot, hi-hat with the foot to the left foot
            """);
  }

  @Test
  void theSameInManyBarsIsSaidOnce() {
    Lesson lesson =
        lesson("groove a\n hands : rlrr lrll r l | rlrr lrll r l | r l r l | rlrr lrll r l\n");
    assertThat(Sticking.of(lesson, lesson.grooves()))
        .contains("   bars 1 2 4, beats 1 to 2: paradiddle\n");
  }
}
