package tabor.merge;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.resolve.Options;

/** What the merged text has and neither side had is told, with the line that it is in. */
class MergeCheckTest {
  private static final String FINE =
      """
      # A lesson
      groove g
        kick : x . x .

      step s
        accent kick at 1
      """;

  private static Compiled compiled(String text) {
    return new Compiler(Loader.NONE).compile(Path.of("lesson.tabor"), text, Options.NONE);
  }

  private static List<String> found(String ours, String theirs, String merged) {
    MergeCheck check = new MergeCheck();
    check.side(compiled(ours));
    check.side(compiled(theirs));
    return check.newProblems(compiled(merged));
  }

  private static String missing(int line, int beat) {
    return "line "
        + line
        + ": there is no stroke of “kick” at "
        + beat
        + " [nothing-there], which neither side has";
  }

  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r\n", "\r"})
  void aProblemStandsWithItsLine(String end) {
    String merged = FINE + "  accent kick at 2\n# more\n\n  ghost kick at 3\n  accent kick at 4\n";
    assertThat(found(FINE, FINE, merged.replace("\n", end)))
        .containsExactly(missing(7, 2), missing(11, 4));
  }

  /** With fewer strokes the line misses one more: it was wrong before. */
  @Test
  void aLineThatASideHasWrongIsNoNewProblem() {
    String wrong = FINE + "  accent kick at 2 3\n";
    String worse = wrong.replace("x . x .", "x . . .");
    assertThat(compiled(worse).diagnostics()).hasSizeGreaterThan(1);
    assertThat(found(wrong, FINE, worse)).isEmpty();
    assertThat(found(FINE, wrong, worse)).isEmpty();
  }

  @Test
  void aSecondWrongLineOfTheSectionIsNew() {
    String wrong = FINE + "  accent kick at 2\n";
    assertThat(found(wrong, FINE, wrong + "  accent kick at 4\n")).containsExactly(missing(8, 4));
  }

  /** Its message is known, wherever in the section it stands now. */
  @Test
  void aMessageThatASideHasIsNoNewProblem() {
    String wrong = FINE + "  accent kick at 2\n";
    assertThat(found(FINE, wrong, FINE + "  # moved\n  accent  kick  at 2 # here\n")).isEmpty();
  }

  @Test
  void theSameLineInAnotherSectionIsNew() {
    String wrong = FINE + "  accent kick at 2\n";
    assertThat(found(wrong, wrong, wrong + "\nstep t from g\n  accent kick at 2\n"))
        .containsExactly(missing(10, 2));
  }

  /** All of them are of one line. */
  @Test
  void aLongLineHasManyProblems() {
    String counts = " 2 4".repeat(200);
    String merged = FINE + "  accent kick at" + counts + "\n";
    assertThat(found(FINE, FINE, merged)).isNotEmpty().allMatch(one -> one.startsWith("line 7: "));
    assertThat(found(merged, FINE, merged)).isEmpty();
  }
}
