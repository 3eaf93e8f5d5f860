package tabor.cli;

import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import tabor.emit.grid.Sticking;
import tabor.groove.Lesson;

/** {@code tabor sticking}: who strikes, under the counts. */
@Command(
    name = "sticking",
    description = "Prints hands and feet under the counts, and names the rudiments among them.",
    mixinStandardHelpOptions = true)
final class StickingCommand implements Callable<Integer> {
  private final Io io;

  @Parameters(index = "0", paramLabel = "FILE", description = "The lesson; - is standard input.")
  private String file = "";

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "SECTION",
      description = "The groove or step; all of them if not given.")
  private @Nullable String section;

  @Mixin private PlayerOptions player = new PlayerOptions();

  StickingCommand(Io io) {
    this.io = io;
  }

  @Override
  public Integer call() {
    Lesson lesson = ReadyLesson.of(io, file, player.options());
    io.out().print(Sticking.of(lesson, ReadyLesson.grooves(lesson, section)));
    return ExitCode.FINE;
  }
}
