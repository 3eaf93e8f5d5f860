package tabor.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import tabor.emit.practice.StepsTable;

/** {@code tabor steps}: a lesson at a glance. */
@Command(
    name = "steps",
    description = "Prints a lesson as a table: what each step changes and asks of each limb.")
final class StepsCommand extends LessonCommand {
  @Option(names = "--as", paramLabel = "FORM", description = "text or tsv; text if not given.")
  private String form = "text";

  StepsCommand(Io io) {
    super(io);
  }

  @Override
  int run() {
    if (!form.equals("text") && !form.equals("tsv")) {
      throw Failure.usage("--as takes text or tsv, not " + form);
    }
    return print(form.equals("text") ? StepsTable::text : StepsTable::tsv);
  }
}
