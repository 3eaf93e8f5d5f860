package tabor.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The git repository around a folder: its top folder and its configuration. */
record Git(Path folder) {
  /** What {@code git config} ends with where a value is not there. */
  private static final int NOT_THERE = 1;

  /** The repository around the current folder; fails where there is none. */
  static Git here() {
    return around(Path.of("").toAbsolutePath());
  }

  /** The repository around a folder; fails with a sentence where there is none. */
  static Git around(Path folder) {
    Git git = new Git(folder);
    Answer inside = git.run("rev-parse", "--is-inside-work-tree");
    if (inside.code() != 0) {
      throw Failure.outside(
          "this folder is in no git repository; go into one, or make one with git init");
    }
    if (!inside.text().equals("true")) {
      throw Failure.outside(
          "this is the inside of a git repository, without its files; go to a folder with the"
              + " lessons");
    }
    return new Git(Path.of(git.ask("rev-parse", "--show-toplevel")));
  }

  /** The top folder, where {@code .gitattributes} stands. */
  Path top() {
    return folder;
  }

  /** A value of this repository's own configuration. */
  Optional<String> get(String key) {
    Answer answer = run("config", "--local", "--get", key);
    return answer.code() == NOT_THERE ? Optional.empty() : Optional.of(checked(answer));
  }

  /** All values of a key. */
  List<String> all(String key) {
    Answer answer = run("config", "--local", "--get-all", key);
    return answer.code() == NOT_THERE ? List.of() : checked(answer).lines().toList();
  }

  void set(String key, String value) {
    ask("config", "--local", key, value);
  }

  void add(String key, String value) {
    ask("config", "--local", "--add", key, value);
  }

  /** Takes out every value of a key; a section that becomes empty goes too. */
  void unset(String key) {
    ask("config", "--local", "--unset-all", key);
  }

  private record Answer(int code, String text, String trouble) {}

  private String ask(String... words) {
    return checked(run(words));
  }

  private static String checked(Answer answer) {
    if (answer.code() != 0) {
      throw Failure.outside("git says: " + answer.trouble());
    }
    return answer.text();
  }

  private Answer run(String... words) {
    List<String> command = new ArrayList<>(List.of("git"));
    command.addAll(List.of(words));
    try {
      Process process = new ProcessBuilder(command).directory(folder.toFile()).start();
      process.getOutputStream().close();
      String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      String err = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
      return new Answer(process.waitFor(), out.stripTrailing(), err.strip());
    } catch (IOException e) {
      throw Failure.outside("git cannot be started; is it installed and on the PATH?");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw Failure.outside("interrupted while git was running");
    }
  }
}
