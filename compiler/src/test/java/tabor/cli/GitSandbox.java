package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Assumptions;

/**
 * A git repository for one test, away from the settings of whoever runs it, and a launcher of the
 * classes under test beside it.
 */
final class GitSandbox {
  private final Path repository;
  private final Path launcher;

  /** Makes both in a folder; the test is passed over where git is not installed. */
  GitSandbox(Path temp) throws IOException, InterruptedException {
    repository = Files.createDirectories(temp.resolve("our class"));
    // A space in its path, as on some machines.
    launcher = Files.createDirectories(temp.resolve("a tool")).resolve("tabor");
    Files.writeString(
        launcher,
        "#!/bin/sh\nexec '"
            + Path.of(System.getProperty("java.home"), "bin", "java")
            + "' -XX:TieredStopAtLevel=1 -Dtabor.out=pipe -Dtabor.err=pipe -cp '"
            + System.getProperty("java.class.path")
            + "' tabor.cli.Main \"$@\"\n");
    executable(launcher);
    Assumptions.assumeTrue(isInstalled(), "git is not installed");
    git("init", "-q", "-b", "trunk");
    git("config", "user.name", "A teacher");
    git("config", "user.email", "teacher@example.org");
    git("config", "commit.gpgsign", "false");
  }

  private boolean isInstalled() throws InterruptedException {
    try {
      return git("--version").code() == 0;
    } catch (IOException missing) {
      return false;
    }
  }

  /** Lets a file be run. */
  static void executable(Path file) throws IOException {
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  /** The folder of the repository. */
  Path folder() {
    return repository;
  }

  /** How a shell calls the launcher. */
  String program() {
    return "'" + launcher + "'";
  }

  /** Runs a program in the repository; what it prints and complains about is one text. */
  Ran run(String input, List<String> words) throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder(words).directory(repository.toFile());
    builder.redirectErrorStream(true);
    Map<String, String> env = builder.environment();
    env.keySet().removeIf(name -> name.startsWith("GIT_"));
    env.put("GIT_CONFIG_GLOBAL", "/dev/null");
    env.put("GIT_CONFIG_SYSTEM", "/dev/null");
    env.put("GIT_EDITOR", "true");
    env.put("LC_ALL", "C.UTF-8");
    env.put("PATH", launcher.getParent() + File.pathSeparator + env.get("PATH"));
    Process process = builder.start();
    process.getOutputStream().write(input.getBytes(StandardCharsets.UTF_8));
    process.getOutputStream().close();
    String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Ran(process.waitFor(), text, "");
  }

  /** Runs git. */
  Ran git(String... words) throws IOException, InterruptedException {
    List<String> all = new ArrayList<>(List.of("git"));
    all.addAll(List.of(words));
    return run("", all);
  }

  /** Runs git, which must succeed; gives what it printed. */
  String done(String... words) throws IOException, InterruptedException {
    Ran ran = git(words);
    assertThat(ran.code()).as(ran.out()).isZero();
    return ran.out();
  }

  /** Runs a line of a shell. */
  Ran shell(String line) throws IOException, InterruptedException {
    return run("", List.of("sh", "-c", line));
  }

  void write(String name, String text) throws IOException {
    Files.writeString(repository.resolve(name), text);
  }

  String read(String name) throws IOException {
    return Files.readString(repository.resolve(name));
  }

  void commit(String message) throws IOException, InterruptedException {
    done("add", "-A");
    done("commit", "-q", "-m", message);
  }
}
