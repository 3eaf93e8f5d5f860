package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FormatCommandTest {
  private static final String LOOSE = "groove   g\n hands:rl r\n kick:x .\n";
  private static final String NEAT = "groove g\n  hands : rl r\n  kick  : x  .\n";

  @TempDir Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(String input, String... args) {
    ByteArrayInputStream in = new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8));
    return Main.run(args, Io.of(in, out, err, false, false, Map.of()));
  }

  private String out() {
    return out.toString(StandardCharsets.UTF_8);
  }

  @Test
  void formatsFilesInPlace() throws IOException {
    Path file = Files.writeString(folder.resolve("a.tabor"), LOOSE);
    assertThat(run("", "format", file.toString())).isEqualTo(ExitCode.FINE);
    assertThat(Files.readString(file)).isEqualTo(NEAT);
    assertThat(out()).isEmpty();
  }

  @Test
  void formatsStandardInputToStandardOutput() {
    assertThat(run(LOOSE, "format", "-")).isEqualTo(ExitCode.FINE);
    assertThat(out()).isEqualTo(NEAT);
  }

  @Test
  void checkNamesWhatIsNotFormattedAndChangesNothing() throws IOException {
    Path loose = Files.writeString(folder.resolve("a.tabor"), LOOSE);
    Files.writeString(folder.resolve("b.tabor"), NEAT);
    assertThat(run("", "format", "--check", folder.toString())).isEqualTo(ExitCode.ERRORS);
    assertThat(out()).isEqualTo(loose + "\n");
    assertThat(Files.readString(loose)).isEqualTo(LOOSE);
  }

  @Test
  void aBadNameChangesNoFile() throws IOException {
    Path file = Files.writeString(folder.resolve("a.tabor"), LOOSE);
    String missing = folder.resolve("none.tabor").toString();
    assertThat(run("", "format", file.toString(), missing)).isEqualTo(ExitCode.ERRORS);
    assertThat(Files.readString(file)).isEqualTo(LOOSE);
    assertThat(err.toString(StandardCharsets.UTF_8)).contains(missing).contains("not there");
  }

  @Test
  void aFileWithErrorsIsFormattedRoundThem() throws IOException {
    Path file = Files.writeString(folder.resolve("a.tabor"), LOOSE + "  hands :  r{\n");
    assertThat(run("", "format", file.toString())).isEqualTo(ExitCode.FINE);
    assertThat(Files.readString(file)).isEqualTo(NEAT + "  hands :  r{\n");
  }
}
