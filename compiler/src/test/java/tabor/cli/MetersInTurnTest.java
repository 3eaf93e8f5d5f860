package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Meters in turn are listed, and nothing wrong is made of them. */
class MetersInTurnTest {
  @TempDir private Path folder;

  private Path lesson(String time) throws IOException {
    Path file = folder.resolve("lesson.tabor");
    Files.writeString(file, time + "\ngroove a\n  hands : r l r l | r l r l\n");
    return file;
  }

  @Test
  void theyAreListed() throws IOException {
    Path file = folder.resolve("lesson.tabor");
    Files.writeString(file, "time 4/4 3/4\ngroove a\n  hands : r l r l | r l r\n");
    assertThat(Ran.of("list", file.toString()).code()).isZero();
  }

  @Test
  void nothingIsWrittenOfThem() throws IOException {
    Path file = folder.resolve("lesson.tabor");
    Files.writeString(file, "time 4/4 3/4\ngroove a\n  hands : r l r l | r l r\n");
    Path out = folder.resolve("out");
    Ran built = Ran.of("build", file.toString(), "-o", out.toString());
    assertThat(built.code()).isNotZero();
    assertThat(built.err()).contains("takes 4/4 3/4 in turn", "chart");
    assertThat(out).doesNotExist();
    assertThat(Ran.of("grid", file.toString()).code()).isNotZero();
  }

  @Test
  void metersOfEqualBarsAreBuilt() throws IOException {
    Path out = folder.resolve("out");
    Ran built =
        Ran.of("build", lesson("time 4/4 4/4").toString(), "-o", out.toString(), "--as", "grid");
    assertThat(built.code()).isZero();
  }
}
