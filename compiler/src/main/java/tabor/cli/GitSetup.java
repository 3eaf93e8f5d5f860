package tabor.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import tabor.syntax.SectionKind;

/**
 * What {@code tabor git-setup} writes and takes back. It notes in the configuration itself what it
 * has set, so that it never touches what somebody else has.
 */
record GitSetup(Io io, Git git) {
  static final String ATTRIBUTES = ".gitattributes";

  /** The line that says which files git shows and merges as lessons. */
  static final String LINE = "*.tabor diff=tabor merge=tabor";

  /** Lists what this command has set: keys with their values. */
  private static final String NOTE = "tabor.set";

  /** Says how the line came into the file of attributes. */
  private static final String HOW = "tabor.attributes";

  /** The file was made for it. */
  private static final String MADE = "made";

  /** The file's last line had no end and got one. */
  private static final String ENDED = "ended";

  private static final String ADDED = "added";

  private static Map<String, String> values(String program) {
    String kinds =
        java.util.Arrays.stream(SectionKind.values())
            .filter(kind -> kind != SectionKind.HEADER)
            .map(SectionKind::word)
            .collect(Collectors.joining("|"));
    Map<String, String> values = new LinkedHashMap<>();
    values.put("diff.tabor.command", program + " diff");
    values.put("diff.tabor.textconv", program + " grid --for-git");
    values.put("diff.tabor.xfuncname", "^[ \t]*((" + kinds + ")[ \t].*)$");
    values.put("merge.tabor.name", "lessons, statement by statement");
    values.put("merge.tabor.driver", program + " merge --marker-size %L --path %P -o %A %O %A %B");
    return values;
  }

  /** What this command has set, as it set it. */
  private Map<String, String> noted() {
    Map<String, String> noted = new LinkedHashMap<>();
    for (String note : git.all(NOTE)) {
      String[] words = note.split(" ", 2);
      noted.put(words[0], words.length == 1 ? "" : words[1]);
    }
    return noted;
  }

  /** Sets what is not set yet, and says so. */
  int write(String program) {
    Map<String, String> noted = noted();
    int code = ExitCode.FINE;
    boolean any = false;
    for (Map.Entry<String, String> entry : values(program).entrySet()) {
      String key = entry.getKey();
      String value = entry.getValue();
      Optional<String> now = git.get(key);
      if (now.isPresent() && now.get().equals(value)) {
        continue;
      }
      if (now.isPresent() && !now.get().equals(noted.get(key))) {
        io.err().print("tabor: " + key + " is set to something else already and stays: ");
        io.err().print(now.get() + "\n");
        code = ExitCode.ERRORS;
        continue;
      }
      git.set(key, value);
      noted.put(key, value);
      say("set", key + " = " + value);
      any = true;
    }
    if (any) {
      note(noted);
    }
    any |= addLine();
    if (!any && code == ExitCode.FINE) {
      io.out().print("everything is set already\n");
    }
    return code;
  }

  private void note(Map<String, String> noted) {
    if (!git.all(NOTE).isEmpty()) {
      git.unset(NOTE);
    }
    noted.forEach((key, value) -> git.add(NOTE, key + " " + value));
  }

  private void say(String how, String what) {
    io.out().print(how + " " + what + "\n");
  }

  private boolean addLine() {
    Path file = git.top().resolve(ATTRIBUTES);
    String text = Files.exists(file) ? read(file) : "";
    if (text.lines().anyMatch(line -> line.strip().equals(LINE))) {
      return false;
    }
    boolean made = !Files.exists(file);
    boolean ended = !text.isEmpty() && !text.endsWith("\n");
    OutputFiles.write(file, text + (ended ? "\n" : "") + LINE + "\n");
    git.set(HOW, made ? MADE : ended ? ENDED : ADDED);
    say("added", "to " + ATTRIBUTES + ": " + LINE);
    return true;
  }

  /** Takes out what this command has set and nobody has changed since. */
  int remove() {
    boolean any = false;
    for (Map.Entry<String, String> entry : noted().entrySet()) {
      Optional<String> now = git.get(entry.getKey());
      if (now.isPresent() && now.get().equals(entry.getValue())) {
        git.unset(entry.getKey());
        say("removed", entry.getKey() + " = " + now.get());
        any = true;
      }
    }
    note(Map.of());
    any |= removeLine();
    if (!any) {
      io.out().print("there is nothing of ours to remove\n");
    }
    return ExitCode.FINE;
  }

  private boolean removeLine() {
    Optional<String> how = git.get(HOW);
    Path file = git.top().resolve(ATTRIBUTES);
    if (how.isEmpty()) {
      return false;
    }
    git.unset(HOW);
    if (!Files.exists(file)) {
      return false;
    }
    List<String> kept = new ArrayList<>();
    boolean found = false;
    for (String line : read(file).split("(?<=\n)", -1)) {
      if (line.strip().equals(LINE)) {
        found = true;
      } else {
        kept.add(line);
      }
    }
    String text = String.join("", kept);
    if (!found) {
      return false;
    }
    if (text.isEmpty() && how.get().equals(MADE)) {
      delete(file);
    } else {
      boolean bare = how.get().equals(ENDED) && text.endsWith("\n");
      OutputFiles.write(file, bare ? text.substring(0, text.length() - 1) : text);
    }
    say("removed", "from " + ATTRIBUTES + ": " + LINE);
    return true;
  }

  private static String read(Path file) {
    return SourceReader.text(file, java.io.InputStream.nullInputStream());
  }

  private static void delete(Path file) {
    try {
      Files.delete(file);
    } catch (IOException e) {
      throw Failure.outside("cannot remove " + file + ": " + SourceReader.reason(e));
    }
  }
}
