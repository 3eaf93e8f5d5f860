package tabor.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tabor.compile.Compiled;
import tabor.emit.grid.Grid;
import tabor.groove.Lesson;
import tabor.groove.Section;
import tabor.resolve.Options;
import tabor.syntax.Line;
import tabor.syntax.SettingStatement;

/** {@code tabor grid}: the counted grid. */
@Command(
    name = "grid",
    description = "Prints the counted grid: counts above, a row for each part, the hands below.")
final class GridCommand extends LessonCommand {
  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "SECTION",
      description = "The groove, step or chart; all of them if not given.")
  private @Nullable String section;

  @Option(
      names = "--for-git",
      description =
          "Never fail: a lesson with errors is printed as it is written. Files in use are also"
              + " looked for beside a lesson of this name below the current folder.")
  private boolean forGit;

  GridCommand(Io io) {
    super(io);
  }

  private String text(Lesson lesson) {
    Section chosen = ReadyLesson.section(lesson, section);
    return Grid.of(lesson, each -> chosen == null || each.name().equals(chosen.name()));
  }

  @Override
  int run() {
    if (forGit) {
      io().out().print(ofVersion(io(), file()));
      return ExitCode.FINE;
    }
    return print(this::text);
  }

  /**
   * The grid of a version of a lesson that git has put into a file of its own, away from the files
   * that it uses; the text as it is written where there are errors. Git shows no difference at all
   * where this fails, so it never does.
   */
  private static String ofVersion(Io io, String word) {
    Path file = SourceFiles.path(word);
    Toolchain toolchain = new Toolchain(io, Options.NONE);
    Compiled compiled = toolchain.compile(file);
    if (usesFiles(compiled) && compiled.hasErrors()) {
      for (Path lesson : lessonsOfThisName(file)) {
        Compiled there = toolchain.compile(lesson, compiled.text());
        if (!there.hasErrors()) {
          compiled = there;
          break;
        }
      }
    }
    return compiled.hasErrors() ? compiled.text() : Grid.of(compiled.lesson(), section -> true);
  }

  private static boolean usesFiles(Compiled compiled) {
    return !compiled.syntax().isEmpty()
        && compiled.syntax().get(0).lines().stream()
            .map(Line::statement)
            .anyMatch(SettingStatement.Use.class::isInstance);
  }

  /** The lessons below the current folder, where git starts its programs at the top. */
  private static List<Path> lessonsOfThisName(Path file) {
    Path name = file.getFileName();
    List<Path> found = new ArrayList<>();
    try {
      for (Path lesson : SourceFiles.find(List.of("."))) {
        if (name != null && lesson.getFileName().equals(name) && Files.isRegularFile(lesson)) {
          found.add(lesson.normalize());
        }
      }
    } catch (Failure nothing) {
      return List.of();
    }
    return List.copyOf(found);
  }
}
