package tabor.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import tabor.source.ResourceText;
import tabor.source.VisibleText;

/** A course to begin with: lessons, a class file, pages, a script and what git should know. */
final class NewCourse {
  /** The class file, beside the lessons. */
  static final String CLASS = "class.tabor";

  private static final String IGNORE = ".gitignore";

  private static final List<String> TEMPLATES =
      List.of(
          "README.md",
          "build.sh",
          "lessons/week-1.tabor",
          "lessons/week-2.tabor",
          "site/index.md",
          "site/week-1.md",
          "site/week-2.md");

  private NewCourse() {}

  /**
   * Writes it and says so; fails with a sentence for a name that cannot be one, and for a folder
   * that holds other things.
   */
  static void write(Io io, String word) {
    Path folder = SourceFiles.path(word);
    if (Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      requireRoom(folder);
    } else {
      NewName.check(folder, word);
      NewName.requireFolderOf(folder);
    }
    Path last = folder.toAbsolutePath().normalize().getFileName();
    Map<String, String> texts = texts(NewName.title(last == null ? "" : last.toString()));
    NewFiles files = new NewFiles();
    List<String> there = new ArrayList<>();
    texts.forEach(
        (name, text) -> {
          if (Files.exists(folder.resolve(name), LinkOption.NOFOLLOW_LINKS)) {
            there.add(name);
          } else {
            files.add(folder.resolve(name), text);
          }
        });
    files.write();
    for (Map.Entry<String, String> file : texts.entrySet()) {
      if (there.contains(file.getKey())) {
        stays(io, folder.resolve(file.getKey()), file.getValue());
      } else {
        io.out().print(folder.resolve(file.getKey()) + "\n");
      }
    }
    String enter = folder.normalize().toString();
    io.out()
        .print(
            "Next: "
                + (enter.isEmpty()
                    ? ""
                    : "cd " + VisibleText.shellWord(folder.toString()) + ", then ")
                + "sh build.sh; for version control, git init and tabor git-setup\n");
  }

  /** Says that a file was left, and which lines it may lack. */
  private static void stays(Io io, Path file, String text) {
    io.err().print("tabor: " + file + " is there already and stays as it is");
    String name = String.valueOf(file.getFileName());
    if (name.equals(IGNORE) || name.equals(GitSetup.ATTRIBUTES)) {
      io.err().print("; it should have these lines:\n");
      text.lines().filter(line -> !line.startsWith("#")).forEach(l -> io.err().print(l + "\n"));
    } else {
      io.err().print("\n");
    }
  }

  /** Fails if a folder holds more than what a repository begins with. */
  private static void requireRoom(Path folder) {
    if (!Files.isDirectory(folder)) {
      throw Failure.outside(folder + " is there already and is no folder; choose another name");
    }
    try (Stream<Path> inside = Files.list(folder)) {
      List<String> others =
          inside
              .map(path -> String.valueOf(path.getFileName()))
              .filter(name -> !isOfRepository(name))
              .sorted()
              .toList();
      if (!others.isEmpty()) {
        throw Failure.outside(
            "the folder "
                + folder
                + " is not empty (it has "
                + others.get(0)
                + (others.size() > 1 ? " and more" : "")
                + "), so nothing is written; choose another name");
      }
    } catch (IOException e) {
      throw Failure.outside("cannot look into " + folder + ": " + SourceReader.reason(e));
    }
  }

  /** True for what a new repository holds: its own folder, files for git, a README, a licence. */
  private static boolean isOfRepository(String name) {
    String lower = name.toLowerCase(Locale.ROOT);
    return lower.startsWith(".") || lower.matches("(?:readme|licen[cs]e)(?:\\.(?:md|txt))?");
  }

  private static Map<String, String> texts(String title) {
    Map<String, String> texts = new LinkedHashMap<>();
    for (String name : TEMPLATES) {
      texts.put(name, template("course/" + name, title));
    }
    String students = template("course/lessons/" + CLASS, title);
    texts.put(
        "class-example.tabor",
        students.replace(
            "{head}", "An example of lessons/" + CLASS + ". The players are invented."));
    texts.put(
        "lessons/" + CLASS,
        students.replace("{head}", "Your students. Git leaves this file out of the repository."));
    texts.put(IGNORE, template("course/gitignore", title));
    texts.put(GitSetup.ATTRIBUTES, GitSetup.LINE + "\n");
    return texts;
  }

  /** A text that comes with the program, with a title in its places. */
  static String template(String name, String title) {
    return ResourceText.of(NewCourse.class, "new/" + name).replace("{title}", title);
  }
}
