package tabor.cli;

import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import tabor.emit.grid.Grid;
import tabor.groove.Lesson;
import tabor.groove.Section;

/** {@code tabor grid}: the counted grid. */
@Command(
    name = "grid",
    description = "Prints the counted grid: counts above, a row for each part, the hands below.",
    mixinStandardHelpOptions = true)
final class GridCommand implements Callable<Integer> {
  private final Io io;

  @Parameters(index = "0", paramLabel = "FILE", description = "The lesson; - is standard input.")
  private String file = "";

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "SECTION",
      description = "The groove, step or chart; all of them if not given.")
  private @Nullable String section;

  @Mixin private PlayerOptions player = new PlayerOptions();

  GridCommand(Io io) {
    this.io = io;
  }

  @Override
  public Integer call() {
    Lesson lesson = ReadyLesson.of(io, file, player.options());
    Section chosen = ReadyLesson.section(lesson, section);
    io.out().print(Grid.of(lesson, each -> chosen == null || each.name().equals(chosen.name())));
    return ExitCode.FINE;
  }
}
