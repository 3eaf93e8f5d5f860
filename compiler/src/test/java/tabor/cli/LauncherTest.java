package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.jar.Attributes;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The script {@code bin/tabor} with a jar that points at the classes under test. */
@Timeout(120)
class LauncherTest {
  private static final String LESSON = "groove beat\n  hihat : rr rr rr rr\n";

  @TempDir private Path folder;

  @BeforeEach
  void needsAShell() {
    assumeThat(Path.of("/bin/sh")).isExecutable();
  }

  /** Installs Tabor below a folder; gives the script. */
  private Path installed(String name) throws IOException {
    return installed(name, "target");
  }

  private Path installed(String name, String jars) throws IOException {
    Path home = Files.createDirectories(folder.resolve(name));
    Path script = Files.createDirectories(home.resolve("bin")).resolve("tabor");
    Files.copy(Path.of(System.getProperty("basedir", ".")).resolve("bin/tabor"), script);
    assertThat(script.toFile().setExecutable(true)).isTrue();
    Manifest manifest = new Manifest();
    Attributes main = manifest.getMainAttributes();
    main.put(Attributes.Name.MANIFEST_VERSION, "1.0");
    main.put(
        Attributes.Name.CLASS_PATH,
        Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
            .map(path -> Path.of(path).toUri().toString())
            .collect(Collectors.joining(" ")));
    Path jar = Files.createDirectories(home.resolve(jars)).resolve("tabor.jar");
    try (OutputStream out = Files.newOutputStream(jar);
        JarOutputStream made = new JarOutputStream(out, manifest)) {
      made.flush();
    }
    return script;
  }

  private String run(Map<String, String> env, String... words)
      throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of(words));
    Path said = folder.resolve("said");
    ProcessBuilder builder =
        new ProcessBuilder(command)
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectOutput(said.toFile());
    builder.environment().keySet().removeIf(key -> key.startsWith("LC_") || key.equals("LANG"));
    builder.environment().putAll(env);
    Process process = builder.start();
    process.getOutputStream().close();
    if (!process.waitFor(60, TimeUnit.SECONDS)) {
      process.descendants().forEach(ProcessHandle::destroyForcibly);
      process.destroyForcibly();
      throw new AssertionError("it did not end: " + Files.readString(said));
    }
    return Files.readString(said, StandardCharsets.UTF_8) + process.exitValue();
  }

  @ParameterizedTest
  @ValueSource(strings = {"plain", "a:b", "größe", "\uD83E\uDD41", "with space; $x", "100%"})
  void worksUnderAFolderOfAnyName(String name) throws IOException, InterruptedException {
    String script = installed(name).toString();
    Files.writeString(folder.resolve("a.tabor"), LESSON);
    assertThat(run(Map.of(), "sh", "-c", "exec \"$0\" check a.tabor", script))
        .isEqualTo("1 file, no problems\n0");
  }

  /**
   * Memory for one run: too little to be right is refused in words, a small lesson needs little.
   */
  @Test
  void memoryIsWhatTheEnvironmentSays() throws IOException, InterruptedException {
    String script = installed("home").toString();
    Files.writeString(folder.resolve("a.tabor"), LESSON);
    String check = "exec \"$0\" check a.tabor";
    for (String amount : List.of("bad", "m", "6 00m", "-1", "600mb!")) {
      assertThat(run(Map.of("TABOR_HEAP", amount), "sh", "-c", check, script))
          .isEqualTo(
              "tabor: TABOR_HEAP is an amount of memory, such as 600m or 2g, not "
                  + amount
                  + "\n2");
    }
    for (String amount : List.of("64m", "65536k", "1G")) {
      assertThat(run(Map.of("TABOR_HEAP", amount), "sh", "-c", check, script))
          .isEqualTo("1 file, no problems\n0");
    }
    // The amount reaches the Java machine, which starts with no less than two megabytes.
    assertThat(run(Map.of("TABOR_HEAP", "1k"), "sh", "-c", check, script)).endsWith("1");
  }

  /** What is run all day starts from an archive of its own, if it is there; all else from one. */
  @Test
  void whatIsRunAllDayHasAnArchiveOfItsOwn() throws IOException, InterruptedException {
    Path script = installed("home", "lib");
    Path java = script.resolveSibling("../runtime/bin/java").normalize();
    Files.createDirectories(java.getParent());
    Files.writeString(
        java, "#!/bin/sh\nfor one; do case $one in *.jsa) echo \"${one##*/}\" ;; esac; done\n");
    assertThat(java.toFile().setExecutable(true)).isTrue();
    String all = "for c in check build weave grid; do \"$0\" $c a; done";
    assertThat(run(Map.of(), "sh", "-c", all, script.toString()))
        .isEqualTo("tabor.jsa\n".repeat(4) + "0");
    for (String name :
        List.of("tabor-check.jsa", "tabor-build.jsa", "tabor-weave.jsa", "tabor-grid.jsa")) {
      Files.createFile(script.resolveSibling("../lib/" + name));
    }
    assertThat(run(Map.of(), "sh", "-c", all, script.toString()))
        .isEqualTo("tabor-check.jsa\ntabor-build.jsa\ntabor-weave.jsa\ntabor.jsa\n0");
  }

  @Test
  void anUnpackedCopyRunsWithTheJavaThatItBrings() throws IOException, InterruptedException {
    Path script = installed("our tools", "lib");
    Files.writeString(folder.resolve("a.tabor"), LESSON);
    String check = "exec \"$0\" check a.tabor";
    assertThat(run(Map.of(), "sh", "-c", check, script.toString()))
        .isEqualTo("1 file, no problems\n0");
    Path java = script.resolveSibling("../runtime/bin/java").normalize();
    Files.createDirectories(java.getParent());
    Files.writeString(java, "#!/bin/sh\necho own java\n");
    assertThat(java.toFile().setExecutable(true)).isTrue();
    assertThat(run(Map.of(), "sh", "-c", check, script.toString())).isEqualTo("own java\n0");
  }

  @Test
  void readsAndWritesNamesBeyondAsciiWhateverTheLocale() throws IOException, InterruptedException {
    // The folder is named by the shell, since this very process may not be able to.
    String script = installed("home").toString();
    Files.writeString(folder.resolve("a.tabor"), LESSON);
    String build =
        "mv a.tabor größe.tabor && \"$0\" build größe.tabor -o für --as grid && cat für/größe.txt";
    for (String locale : List.of("C", "POSIX", "")) {
      String said = run(Map.of("LC_ALL", locale), "sh", "-c", build, script);
      assertThat(said).contains("größe.tabor: 1 file in für").contains("bar 1").endsWith("0");
      run(Map.of(), "sh", "-c", "mv gr*.tabor a.tabor && rm -r f*r");
    }
  }

  @Test
  void closedStreamsAreToldAndNothingElseIsRead() throws IOException, InterruptedException {
    String script = installed("home").toString();
    Files.writeString(folder.resolve("a.tabor"), LESSON);
    assertThat(run(Map.of(), "sh", "-c", "\"$0\" check - <&-", script))
        .contains("[unreadable]")
        .contains("it is closed")
        .endsWith("1");
    assertThat(run(Map.of(), "sh", "-c", "\"$0\" grid a.tabor >&-", script))
        .contains("cannot write the output: it is closed")
        .endsWith("1");
    assertThat(run(Map.of(), "sh", "-c", "\"$0\" grid a.tabor 2>&-", script)).endsWith("\n0");
  }

  @Test
  void stoppedByCtrlCItLeavesNothingHalfDone() throws IOException, InterruptedException {
    String script = installed("home").toString();
    Files.writeString(folder.resolve("a.tabor"), LESSON + LESSON.replace("beat", "more"));
    for (int millis = 100; millis <= 1000; millis += 150) {
      String stop =
          "\"$0\" build a.tabor -o out --as all & sleep "
              + millis / 1000.0
              + "; kill -INT $!; wait $!; true";
      run(Map.of(), "bash", "-c", "set -m; " + stop, script);
      Path out = folder.resolve("out");
      if (Files.exists(out)) {
        try (Stream<Path> files = Files.list(out)) {
          assertThat(files.map(Path::toString)).noneMatch(name -> name.endsWith(".part"));
        }
      }
    }
  }
}
