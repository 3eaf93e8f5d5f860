package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputFilesTest {
  @TempDir private Path folder;

  /** A long file is compared piece by piece: a change far behind its beginning is one too. */
  @Test
  void aChangeAnywhereIsSeen() throws IOException {
    byte[] bytes = new byte[200_000];
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = (byte) (i * 31);
    }
    Path file = folder.resolve("sound.wav");
    assertThat(OutputFiles.write(file, bytes)).isEqualTo(OutputFiles.Outcome.NEW);
    assertThat(OutputFiles.write(file, bytes)).isEqualTo(OutputFiles.Outcome.UNCHANGED);
    for (int place : new int[] {0, 65_535, 65_536, 131_072, 199_999}) {
      bytes[place]++;
      assertThat(OutputFiles.write(file, bytes))
          .as("at %d", place)
          .isEqualTo(OutputFiles.Outcome.CHANGED);
      assertThat(Files.readAllBytes(file)).isEqualTo(bytes);
    }
    assertThat(OutputFiles.write(file, new byte[0])).isEqualTo(OutputFiles.Outcome.CHANGED);
    assertThat(OutputFiles.write(file, new byte[0])).isEqualTo(OutputFiles.Outcome.UNCHANGED);
  }
}
