package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import com.google.gson.JsonParser;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The recipes of docs/version-control.md, run as they stand there. */
class VersionControlRecipesTest {
  private static final Path PAGE = Path.of("../docs/version-control.md");
  private static final String FINE = "groove a\n  kick : x . x .\n";

  @TempDir private Path temp;
  private Path repository;

  @BeforeEach
  void makeRepository() throws Exception {
    repository = Files.createDirectories(temp.resolve("class"));
    assumeThat(run("git --version").code()).as("git is installed").isZero();
    Path launcher = Files.createDirectories(temp.resolve("bin")).resolve("tabor");
    Files.writeString(
        launcher,
        "#!/bin/sh\nexec '"
            + Path.of(System.getProperty("java.home"), "bin", "java")
            + "' -XX:TieredStopAtLevel=1 -Dtabor.out=pipe -Dtabor.err=pipe -cp '"
            + System.getProperty("java.class.path")
            + "' tabor.cli.Main \"$@\"\n");
    executable(launcher);
    done("git init -q -b trunk && git config user.name A && git config user.email a@example.org");
    Files.createDirectories(repository.resolve("lessons"));
  }

  private static void executable(Path file) throws IOException {
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  private Ran run(String line) throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder("sh", "-c", line).directory(repository.toFile());
    builder.redirectErrorStream(true);
    Map<String, String> env = builder.environment();
    env.keySet().removeIf(name -> name.startsWith("GIT_"));
    env.put("GIT_CONFIG_GLOBAL", "/dev/null");
    env.put("GIT_CONFIG_SYSTEM", "/dev/null");
    env.put("PATH", temp.resolve("bin") + File.pathSeparator + env.get("PATH"));
    Process process = builder.start();
    process.getOutputStream().close();
    String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Ran(process.waitFor(), text, "");
  }

  private void done(String line) throws IOException, InterruptedException {
    Ran ran = run(line);
    assertThat(ran.code()).as(ran.out()).isZero();
  }

  /** The indented block of the page that begins with this line. */
  private static String block(String first) throws IOException {
    List<String> lines = Files.readAllLines(PAGE);
    int at = lines.indexOf("    " + first);
    assertThat(at).as(first).isNotNegative();
    StringBuilder text = new StringBuilder();
    for (String line : lines.subList(at, lines.size())) {
      if (!line.startsWith("    ") && !line.isEmpty()) {
        break;
      }
      text.append(line.isEmpty() ? "" : line.substring(4)).append('\n');
    }
    return text.toString();
  }

  private void lesson(String text) throws IOException {
    Files.writeString(repository.resolve("lessons/a.tabor"), text);
  }

  @Test
  void theHookRefusesWhatIsWrongOrNotFormatted() throws Exception {
    Path hook = repository.resolve(".git/hooks/pre-commit");
    Files.createDirectories(hook.getParent());
    Files.writeString(hook, block("#!/bin/sh"));
    executable(hook);
    done("git commit -q --allow-empty -m 'No lesson yet'");
    lesson(FINE);
    done("git add -A && git commit -q -m 'A lesson'");
    lesson(FINE.replace("  kick", "kick"));
    Ran ran = run("git add -A && git commit -q -m 'Not formatted'");
    assertThat(ran.code()).isNotZero();
    assertThat(ran.out()).contains("a.tabor").contains("Run tabor format");
    lesson("groove a\n  kick : x . x\n");
    ran = run("git add -A && git commit -q -m 'Too short'");
    assertThat(ran.code()).isNotZero();
    assertThat(ran.out()).contains("[bar-length]");
    // What is not to be committed does not matter.
    lesson(FINE.replace("x . x .", "x x x ."));
    done("git add -A");
    lesson("groove");
    done("git commit -q -m 'The right half'");
  }

  @Test
  void theJobsLinesRunAndMakeAReport() throws Exception {
    List<String> commands =
        block("name: lessons")
            .lines()
            .map(String::strip)
            .filter(line -> line.startsWith("- run: "))
            .map(line -> line.substring("- run: ".length()))
            .toList();
    assertThat(commands).hasSize(2);
    lesson(FINE);
    for (String command : commands) {
      done(command);
    }
    lesson("groove a\n  kick : x . x\n");
    assertThat(run(commands.get(1)).code()).isEqualTo(1);
    var run =
        JsonParser.parseString(Files.readString(repository.resolve("tabor.sarif")))
            .getAsJsonObject()
            .getAsJsonArray("runs")
            .get(0)
            .getAsJsonObject();
    var result = run.getAsJsonArray("results").get(0).getAsJsonObject();
    assertThat(result.get("ruleId").getAsString()).isEqualTo("bar-length");
    assertThat(result.toString()).contains("\"uri\":\"lessons/a.tabor\"");
  }
}
