package tabor.lsp.startup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The program {@code tabor} as the build has made it by now, with its archives of classes: what a
 * start costs shows in the classes that Java has to look for elsewhere or to make up.
 */
@Timeout(120)
class BuiltProgramTest {
  private static final Path TOP = Path.of(System.getProperty("basedir", ".")).resolve("..");
  private static final Path JAR = TOP.resolve("compiler/target/tabor.jar");

  @TempDir private Path folder;

  @BeforeEach
  void needsTheBuiltProgram() {
    assumeThat(JAR).isRegularFile();
    assumeThat(JAR.resolveSibling("tabor-check.jsa")).isRegularFile();
  }

  /** The log of the classes that a command loads, a line each. */
  private List<String> loaded(String archive, String... words)
      throws IOException, InterruptedException {
    Path log = folder.resolve("log");
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-XX:SharedArchiveFile=" + JAR.resolveSibling(archive));
    command.add("-Xlog:class+load:file=" + log + ":none:filesize=0");
    command.addAll(List.of("-XX:TieredStopAtLevel=1", "-Xmx600m"));
    command.addAll(List.of("-Dtabor.in=open", "-Dtabor.out=pipe", "-Dtabor.err=pipe"));
    command.addAll(List.of("-cp", JAR.toString(), "tabor.cli.Main"));
    command.addAll(List.of(words));
    Path said = folder.resolve("said");
    Process process =
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(said.toFile()).start();
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    assertThat(process.exitValue()).as(Files.readString(said)).isZero();
    return Files.readAllLines(log);
  }

  private static List<String> lessons() throws IOException {
    try (Stream<Path> files = Files.walk(TOP.resolve("examples"))) {
      return files.map(Path::toString).filter(f -> f.endsWith(".tabor")).sorted().toList();
    }
  }

  private static List<String> matching(List<String> loaded, Predicate<String> which) {
    return loaded.stream().filter(which).toList();
  }

  /** Lessons such as people write are checked without a class from the jar. */
  @Test
  void theArchiveHasWhatTheExamplesNeed() throws IOException, InterruptedException {
    List<String> words = new ArrayList<>(List.of("check"));
    words.addAll(lessons());
    assertThat(words).hasSizeGreaterThan(30);
    List<String> ours =
        matching(
            loaded("tabor-check.jsa", words.toArray(String[]::new)), c -> c.startsWith("tabor."));
    assertThat(ours).hasSizeGreaterThan(500);
    assertThat(matching(ours, c -> !c.contains("source: shared"))).isEmpty();
  }

  /** No lambda of Tabor is put together by Java, and no method of a record. */
  @Test
  void nothingIsMadeUpAtTheStart() throws IOException, InterruptedException {
    String lesson = TOP.resolve("examples/hands-to-groove.tabor").toString();
    String out = folder.resolve("out").toString();
    for (List<String> loaded :
        List.of(
            loaded("tabor-check.jsa", "check", lesson),
            loaded("tabor-build.jsa", "build", lesson, "-o", out))) {
      assertThat(matching(loaded, c -> c.startsWith("tabor."))).hasSizeGreaterThan(500);
      assertThat(matching(loaded, c -> c.startsWith("tabor.") && c.contains("$$Lambda"))).isEmpty();
      assertThat(matching(loaded, c -> c.startsWith("java.lang.runtime.ObjectMethods "))).isEmpty();
    }
  }

  /**
   * A page without mistakes is read by the tables that the build has made, not by ANTLR's networks.
   */
  @Test
  void noNetworkIsSetUpForAGoodPage() throws IOException, InterruptedException {
    String lesson = TOP.resolve("examples/hands-to-groove.tabor").toString();
    List<String> loaded = loaded("tabor-check.jsa", "check", lesson);
    assertThat(matching(loaded, c -> c.startsWith("tabor.grammar.DecisionTable "))).hasSize(1);
    assertThat(matching(loaded, c -> c.contains(".ATNDeserializer "))).isEmpty();
  }

  /** A page of text is written without the classes that draw pictures. */
  @Test
  void noPictureIsDrawnBeforeAPage() throws IOException, InterruptedException {
    String lesson = TOP.resolve("examples/one-bar.tabor").toString();
    String out = folder.resolve("out").toString();
    List<String> loaded = loaded("tabor-build.jsa", "build", lesson, "--as", "pdf", "-o", out);
    assertThat(matching(loaded, c -> c.startsWith("org.apache.pdfbox.pdmodel.PDDocument ")))
        .hasSize(1);
    assertThat(matching(loaded, c -> c.startsWith("java.awt.Toolkit "))).isEmpty();
  }
}
