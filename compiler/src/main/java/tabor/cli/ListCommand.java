package tabor.cli;

import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tabor.emit.strokes.StrokeList;
import tabor.groove.Groove;
import tabor.groove.Lesson;

/** {@code tabor list}: every stroke with its exact place. */
@Command(
    name = "list",
    description = "Lists every stroke with its exact place, length and time.",
    mixinStandardHelpOptions = true,
    footer = {
      "",
      "at and length are written whole notes; ms is when the stroke sounds, in milliseconds",
      "from the start of its section at the section's tempo, swing included."
    })
final class ListCommand implements Callable<Integer> {
  private final Io io;

  @Parameters(index = "0", paramLabel = "FILE", description = "The lesson; - is standard input.")
  private String file = "";

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "SECTION",
      description = "The groove or step; all of them if not given.")
  private @Nullable String section;

  @Option(names = "--as", paramLabel = "FORM", description = "tsv or json; tsv if not given.")
  private String form = "tsv";

  @Mixin private PlayerOptions player = new PlayerOptions();

  ListCommand(Io io) {
    this.io = io;
  }

  @Override
  public Integer call() {
    if (!form.equals("tsv") && !form.equals("json")) {
      throw Failure.usage("--as takes tsv or json, not " + form);
    }
    Lesson lesson = ReadyLesson.of(io, file, player.options());
    List<Groove> grooves = ReadyLesson.grooves(lesson, section);
    io.out().print(form.equals("tsv") ? StrokeList.tsv(grooves) : StrokeList.json(grooves));
    return ExitCode.FINE;
  }
}
