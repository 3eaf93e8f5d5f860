package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.File;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.jar.Attributes;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The script {@code bin/tabor-lsp}, as an editor starts it. */
@Timeout(120)
class LauncherTest {
  private static final String ASKED = "\"id\":5,";

  @TempDir private Path folder;
  private Path temporary;

  @BeforeEach
  void needsAShell() throws IOException {
    assumeThat(Path.of("/bin/sh")).isExecutable();
    temporary = Files.createDirectory(folder.resolve("tmp"));
  }

  /** A jar that only points at the classes under test, and the script that starts it. */
  private Path install(String home) throws IOException {
    Path target = Files.createDirectories(folder.resolve(home).resolve("target"));
    Manifest points = new Manifest();
    points.getMainAttributes().put(Attributes.Name.MANIFEST_VERSION, "1.0");
    String[] classes = System.getProperty("java.class.path").split(File.pathSeparator);
    points
        .getMainAttributes()
        .put(
            Attributes.Name.CLASS_PATH,
            String.join(
                " ", Arrays.stream(classes).map(at -> new File(at).toURI().toString()).toList()));
    new JarOutputStream(Files.newOutputStream(target.resolve("tabor-lsp.jar")), points).close();
    Path script = target.resolveSibling("bin").resolve("tabor-lsp");
    Files.createDirectories(script.getParent());
    Path ours = Path.of(System.getProperty("basedir", ".")).resolve("bin/tabor-lsp");
    return Files.copy(ours, script, java.nio.file.StandardCopyOption.COPY_ATTRIBUTES);
  }

  private ProcessBuilder shell(Map<String, String> locale, String line, Path script) {
    // By way of a shell, since this very process may not be able to name the script.
    ProcessBuilder shell = new ProcessBuilder("sh", "-c", line, script.toString());
    shell.environment().keySet().removeIf(key -> key.startsWith("LC_") || key.equals("LANG"));
    shell.environment().putAll(locale);
    shell.environment().put("TMPDIR", temporary.toString());
    return shell.directory(folder.toFile()).redirectError(folder.resolve("err").toFile());
  }

  /** What the server says to a whole session, and its exit code below. */
  private String session(Map<String, String> locale, Path script, String... messages)
      throws IOException, InterruptedException {
    StringBuilder all = new StringBuilder(RawClient.framed(RawClient.INITIALIZE));
    for (String message : messages) {
      all.append(RawClient.framed(message));
    }
    Path out = folder.resolve("out");
    Process process = shell(locale, "exec \"$0\"", script).redirectOutput(out.toFile()).start();
    try (Writer in = process.outputWriter(StandardCharsets.UTF_8)) {
      in.append(all).flush();
      // A client that leaves does not get what it has asked for.
      while (process.isAlive()
          && all.indexOf(ASKED) >= 0
          && !Files.readString(out, StandardCharsets.ISO_8859_1).contains(ASKED)) {
        Thread.sleep(10);
      }
      in.append(RawClient.framed(RawClient.SHUTDOWN)).append(RawClient.framed(RawClient.EXIT));
    }
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    assertThat(folder.resolve("err")).isEmptyFile();
    return Files.readString(out, StandardCharsets.UTF_8) + "\n" + process.exitValue();
  }

  private void assertNothingLeft() throws IOException {
    try (Stream<Path> left = Files.list(temporary)) {
      assertThat(
              left.filter(path -> !path.endsWith("hsperfdata_" + System.getProperty("user.name"))))
          .isEmpty();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"plain", "a:b", "größe", "\uD83E\uDD41", "with space; $x", "100%"})
  void startsUnderAFolderOfAnyName(String name) throws IOException, InterruptedException {
    assertThat(session(Map.of(), install(name)))
        .startsWith("Content-Length: ")
        .contains("\"tabor-lsp\"")
        .endsWith("\n0");
    assertNothingLeft();
  }

  @Test
  void startsThroughLinks() throws IOException, InterruptedException {
    Path script = install("home");
    Path near = Files.createSymbolicLink(script.resolveSibling("near"), Path.of("tabor-lsp"));
    Path far = Files.createSymbolicLink(folder.resolve("far"), near);
    assertThat(session(Map.of(), far)).contains("\"tabor-lsp\"").endsWith("\n0");
  }

  /** One of these locales is hardly installed anywhere: it counts as none. */
  @ParameterizedTest
  @ValueSource(strings = {"C", "POSIX", "", "xx_XX.UTF-8", "C.UTF-8"})
  void readsFilesOfAnyNameWhateverTheLocale(String locale)
      throws IOException, InterruptedException {
    Path script = install("home");
    Files.writeString(folder.resolve("used"), "groove b\n  kick : x x x x\n");
    String move = "mkdir 'für' && mv used 'für/größe\uD83E\uDD41.tabor'";
    assertThat(shell(Map.of(), move, script).start().waitFor()).isZero();
    String uri = folder.toUri() + "f%C3%BCr/a.tabor";
    String text = "use \\\"größe\uD83E\uDD41.tabor\\\"\\nstep a from b\\n  drop kick at 2\\n";
    String open =
        "{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didOpen\",\"params\":{\"textDocument\":"
            + "{\"uri\":\"%s\",\"languageId\":\"tabor\",\"version\":1,\"text\":\"%s\"}}}";
    String ask =
        "{\"jsonrpc\":\"2.0\",\"id\":5,\"method\":\"textDocument/diagnostic\",\"params\":"
            + "{\"textDocument\":{\"uri\":\"%s\"}}}";
    String said =
        session(
            new TreeMap<>(Map.of("LC_ALL", locale)),
            script,
            open.formatted(uri, text),
            ask.formatted(uri));
    assertThat(said).contains("\"items\":[]").doesNotContain("file-not-found").endsWith("\n0");
  }

  /** An editor that stops the script has stopped the server, also where it has another name. */
  @ParameterizedTest
  @ValueSource(strings = {"plain", "a:b"})
  void stoppedItLeavesNothing(String name) throws IOException, InterruptedException {
    Process process = shell(Map.of(), "exec \"$0\"", install(name)).start();
    process
        .getOutputStream()
        .write(RawClient.framed(RawClient.INITIALIZE).getBytes(StandardCharsets.UTF_8));
    process.getOutputStream().flush();
    assertThat(process.getInputStream().read()).isEqualTo('C');
    ProcessHandle server =
        name.equals("plain")
            ? process.toHandle()
            : process.toHandle().children().findFirst().orElseThrow();
    process.toHandle().destroy();
    assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
    server.onExit().join();
    assertNothingLeft();
  }
}
