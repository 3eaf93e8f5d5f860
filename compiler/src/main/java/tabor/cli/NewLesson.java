package tabor.cli;

import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import tabor.source.VisibleText;

/** A lesson to begin with. */
final class NewLesson {
  private NewLesson() {}

  /**
   * Writes it and says so; fails with a sentence for a name that cannot be one, or that is taken.
   */
  static void write(Io io, String word) {
    String bare =
        word.endsWith(SourceFiles.ENDING)
            ? word.substring(0, word.length() - SourceFiles.ENDING.length())
            : word;
    Path named = SourceFiles.path(bare);
    String name = NewName.check(named, word);
    Path file = named.resolveSibling(name + SourceFiles.ENDING);
    if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      throw Failure.outside(file + " is there already and stays as it is; choose another name");
    }
    NewName.requireFolderOf(file);
    boolean withClass = Files.isRegularFile(file.resolveSibling(NewCourse.CLASS));
    String text =
        NewCourse.template("lesson.tabor", NewName.title(name))
            .replace("{use}", withClass ? "use   \"" + NewCourse.CLASS + "\"\n" : "");
    NewFiles files = new NewFiles();
    files.add(file, text);
    files.write();
    io.out().print(file + "\n");
    Path practice = Path.of("out", name + ".html");
    io.out()
        .print(
            "Next: tabor build "
                + VisibleText.shellWord(file.toString())
                + " -o out, and look at "
                + practice
                + "\n");
  }
}
