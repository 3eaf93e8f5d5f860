package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The recipes of docs/version-control.md, run as they stand there. */
class VersionControlRecipesTest {
  private static final Path PAGE = Path.of("../docs/version-control.md");
  private static final String FINE = "groove a\n  kick : x . x .\n";

  @TempDir private Path temp;
  private GitSandbox git;

  @BeforeEach
  void makeRepository() throws Exception {
    git = new GitSandbox(temp);
    Files.createDirectories(git.folder().resolve("lessons"));
  }

  private void done(String line) throws IOException, InterruptedException {
    Ran ran = git.shell(line);
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
    Files.writeString(git.folder().resolve("lessons/a.tabor"), text);
  }

  @Test
  void theHookRefusesWhatIsWrongOrNotFormatted() throws Exception {
    Path hook = git.folder().resolve(".git/hooks/pre-commit");
    Files.createDirectories(hook.getParent());
    Files.writeString(hook, block("#!/bin/sh"));
    GitSandbox.executable(hook);
    done("git commit -q --allow-empty -m 'No lesson yet'");
    lesson(FINE);
    done("git add -A && git commit -q -m 'A lesson'");
    lesson(FINE.replace("  kick", "kick"));
    Ran ran = git.shell("git add -A && git commit -q -m 'Not formatted'");
    assertThat(ran.code()).isNotZero();
    assertThat(ran.out()).contains("a.tabor").contains("Run tabor format");
    lesson("groove a\n  kick : x . x\n");
    ran = git.shell("git add -A && git commit -q -m 'Too short'");
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
    assertThat(git.shell(commands.get(1)).code()).isEqualTo(1);
    var run =
        JsonParser.parseString(Files.readString(git.folder().resolve("tabor.sarif")))
            .getAsJsonObject()
            .getAsJsonArray("runs")
            .get(0)
            .getAsJsonObject();
    var result = run.getAsJsonArray("results").get(0).getAsJsonObject();
    assertThat(result.get("ruleId").getAsString()).isEqualTo("bar-length");
    assertThat(result.toString()).contains("\"uri\":\"lessons/a.tabor\"");
  }
}
