package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class RehearsalTest {
  /** A lesson with errors would not be built, and its classes would miss from the archive. */
  @Test
  void theLessonIsFine() {
    assertThat(Ran.reading(Rehearsal.FINE, "check", "-"))
        .isEqualTo(new Ran(0, "1 file, no problems\n", ""));
  }
}
