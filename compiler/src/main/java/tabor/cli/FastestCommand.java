package tabor.cli;

import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import tabor.emit.practice.FastestText;
import tabor.groove.Lesson;

/** {@code tabor fastest}: at which tempo a limb has no time left. */
@Command(
    name = "fastest",
    description = "Says at which tempo one limb has no time left for what is written.",
    mixinStandardHelpOptions = true,
    footer = {
      "",
      "The figures are general ones, or those that a limits line gives; a student's own limit",
      "is lower."
    })
final class FastestCommand implements Callable<Integer> {
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

  FastestCommand(Io io) {
    this.io = io;
  }

  @Override
  public Integer call() {
    Lesson lesson = ReadyLesson.of(io, file, player.options());
    io.out().print(FastestText.of(lesson, ReadyLesson.grooves(lesson, section)));
    return ExitCode.FINE;
  }
}
