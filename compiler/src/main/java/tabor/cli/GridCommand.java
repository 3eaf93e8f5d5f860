package tabor.cli;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import tabor.emit.grid.Grid;
import tabor.groove.Lesson;
import tabor.groove.Section;

/** {@code tabor grid}: the counted grid. */
@Command(
    name = "grid",
    description = "Prints the counted grid: counts above, a row for each part, the hands below.",
    mixinStandardHelpOptions = true)
final class GridCommand extends LessonCommand {
  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "SECTION",
      description = "The groove, step or chart; all of them if not given.")
  private @Nullable String section;

  GridCommand(Io io) {
    super(io);
  }

  @Override
  int run() {
    Lesson lesson = lesson();
    Section chosen = ReadyLesson.section(lesson, section);
    io().out().print(Grid.of(lesson, each -> chosen == null || each.name().equals(chosen.name())));
    return ExitCode.FINE;
  }
}
