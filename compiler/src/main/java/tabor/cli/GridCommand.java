package tabor.cli;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tabor.emit.grid.Grid;
import tabor.groove.Lesson;
import tabor.groove.Section;

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
      io().out().print(GridForGit.of(io(), file()));
      return ExitCode.FINE;
    }
    return print(this::text);
  }
}
