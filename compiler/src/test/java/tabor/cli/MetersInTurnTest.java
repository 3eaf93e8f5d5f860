package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Meters in turn, from a file to the files that are made of it. */
class MetersInTurnTest {
  @TempDir private Path folder;

  private Path lesson(String time, String hands) throws IOException {
    Path file = folder.resolve("lesson.tabor");
    Files.writeString(file, time + "\ngroove a\n  hands : " + hands + "\n");
    return file;
  }

  @Test
  void theGridNamesBothMetersAndCountsEachBar() throws IOException {
    Path file = lesson("time 4/4 3/4", "r l r l | r l r");
    Ran grid = Ran.of("grid", file.toString());
    assertThat(grid.code()).isZero();
    assertThat(grid.out()).contains("4/4 and 3/4 in turn", "1 2 3 4 | 1 2 3");
  }

  @Test
  void everyFormIsWritten() throws IOException {
    Path file = lesson("time 7/8 in 2+2+3 4/4", "rl rl rlr | r l r l");
    Path out = folder.resolve("out");
    Ran built =
        Ran.of(
            "build",
            file.toString(),
            "-o",
            out.toString(),
            "--as",
            "midi,grid,musicxml,svg,png,pdf,html,wav");
    assertThat(built.err()).isEmpty();
    assertThat(built.code()).isZero();
  }
}
