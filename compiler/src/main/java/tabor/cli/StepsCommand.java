package tabor.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tabor.emit.practice.StepsTable;
import tabor.groove.Lesson;

/** {@code tabor steps}: a lesson at a glance. */
@Command(
    name = "steps",
    description = "Prints a lesson as a table: what each step changes and asks of each limb.",
    mixinStandardHelpOptions = true)
final class StepsCommand implements Callable<Integer> {
  private final Io io;

  @Parameters(index = "0", paramLabel = "FILE", description = "The lesson; - is standard input.")
  private String file = "";

  @Option(names = "--as", paramLabel = "FORM", description = "text or tsv; text if not given.")
  private String form = "text";

  @Mixin private PlayerOptions player = new PlayerOptions();

  StepsCommand(Io io) {
    this.io = io;
  }

  @Override
  public Integer call() {
    if (!form.equals("text") && !form.equals("tsv")) {
      throw Failure.usage("--as takes text or tsv, not " + form);
    }
    Lesson lesson = ReadyLesson.of(io, file, player.options());
    io.out().print(form.equals("text") ? StepsTable.text(lesson) : StepsTable.tsv(lesson));
    return ExitCode.FINE;
  }
}
