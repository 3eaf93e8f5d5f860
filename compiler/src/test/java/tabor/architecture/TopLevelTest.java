package tabor.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The top of the repository holds what a newcomer looks for, and nothing that was left there. */
class TopLevelTest {
  private static final Path TOP = Path.of("..");

  private static final Set<String> EXPECTED =
      Set.of(
          "README.md",
          "DEVELOPERS.md",
          "pom.xml",
          "grammar",
          "compiler",
          "lsp",
          "examples",
          "docs");

  @Test
  void theTopLevelHoldsNothingElse() throws Exception {
    Set<String> names = new TreeSet<>(tracked().orElseGet(TopLevelTest::unignored));
    names.removeIf(name -> name.startsWith("."));
    assertThat(names).containsExactlyInAnyOrderElementsOf(EXPECTED);
  }

  /** What git keeps; empty where the sources stand without git. */
  private static Optional<List<String>> tracked() throws IOException, InterruptedException {
    if (!Files.exists(TOP.resolve(".git"))) {
      return Optional.empty();
    }
    Process git;
    try {
      git =
          new ProcessBuilder("git", "-c", "core.quotePath=false", "ls-files")
              .directory(TOP.toFile())
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
    } catch (IOException noGit) {
      return Optional.empty();
    }
    String files = new String(git.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return git.waitFor() == 0
        ? Optional.of(files.lines().map(line -> line.split("/", 2)[0]).toList())
        : Optional.empty();
  }

  /** What stands there, but for what the build and editors write and git would pass over. */
  private static List<String> unignored() {
    try (Stream<Path> files = Files.list(TOP)) {
      List<String> ignored = Files.readAllLines(TOP.resolve(".gitignore"));
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> ignored.stream().noneMatch(line -> passesOver(line, name)))
          .toList();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static boolean passesOver(String line, String name) {
    return line.startsWith("*") ? name.endsWith(line.substring(1)) : line.equals(name + "/");
  }
}
