package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

class RehearsalTest {
  /** A lesson with errors would not be built, and its classes would miss from the archive. */
  @Test
  void theLessonIsFine() {
    assertThat(Ran.reading(Rehearsal.FINE, "check", "-"))
        .isEqualTo(new Ran(0, "1 file, no problems\n", ""));
  }

  /**
   * Joining of texts and put-together comparators that the JVM makes up at run time are in no
   * archive, and cost a good part of a start: a check does without them.
   */
  @Test
  @Timeout(60)
  void aCheckSpinsNoClasses(@TempDir Path folder) throws IOException, InterruptedException {
    Path lesson = Files.writeString(folder.resolve("a.tabor"), Rehearsal.FINE);
    Path said = folder.resolve("said");
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xlog:class+load",
                "-Dtabor.out=pipe",
                "-Dtabor.err=pipe",
                "-cp",
                System.getProperty("java.class.path"),
                "tabor.cli.Main",
                "check",
                lesson.toString())
            .redirectErrorStream(true)
            .redirectOutput(said.toFile())
            .start();
    assertThat(process.waitFor()).isZero();
    assertThat(Files.readString(said))
        .contains("tabor.cli.Check ")
        .contains("1 file, no problems")
        .doesNotContain("java.util.Comparator$$Lambda")
        // What comes from a file of the jar costs a search of the runtime, then of the jar.
        .doesNotContain("jdk.internal.jimage.ImageReader ");
  }
}
