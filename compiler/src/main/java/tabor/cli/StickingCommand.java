package tabor.cli;

import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import tabor.emit.grid.Sticking;
import tabor.groove.Groove;
import tabor.groove.Lesson;

/** {@code tabor sticking}: who strikes, under the counts. */
@Command(
    name = "sticking",
    description = "Prints hands and feet under the counts, and names the rudiments among them.")
final class StickingCommand extends GroovesCommand {
  @Option(names = "--why", description = "Also says why each hand plays what it plays.")
  private boolean why;

  StickingCommand(Io io) {
    super(io);
  }

  @Override
  String text(Lesson lesson, List<Groove> grooves) {
    return Sticking.of(lesson, grooves, why);
  }
}
