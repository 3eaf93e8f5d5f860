package tabor.cli;

import java.util.List;
import picocli.CommandLine.Command;
import tabor.emit.practice.FastestText;
import tabor.groove.Groove;
import tabor.groove.Lesson;

/** {@code tabor fastest}: at which tempo a limb has no time left. */
@Command(
    name = "fastest",
    description = "Says at which tempo one limb has no time left for what is written.",
    footer = {
      "",
      "The figures are general ones, or those that a limits line gives; a student's own limit",
      "is lower."
    })
final class FastestCommand extends GroovesCommand {
  FastestCommand(Io io) {
    super(io);
  }

  @Override
  String text(Lesson lesson, List<Groove> grooves) {
    return FastestText.of(lesson, grooves);
  }
}
