package tabor.cli;

import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import tabor.emit.strokes.StrokeList;
import tabor.groove.Groove;
import tabor.groove.Lesson;

/** {@code tabor list}: every stroke with its exact place. */
@Command(
    name = "list",
    description = "Lists every stroke with its exact place, length and time.",
    footer = {
      "",
      "at and length are written whole notes; ms is when the stroke sounds, in milliseconds",
      "from the start of its section at the section's tempo, swing included."
    })
final class ListCommand extends GroovesCommand {
  @Option(names = "--as", paramLabel = "FORM", description = "tsv or json; tsv if not given.")
  private String form = "tsv";

  ListCommand(Io io) {
    super(io);
  }

  @Override
  int run() {
    if (!form.equals("tsv") && !form.equals("json")) {
      throw Failure.usage("--as takes tsv or json, not " + form);
    }
    if (form.equals("json") && forSeveral()) {
      throw Failure.usage("--as json lists one player at a time; name one after --for");
    }
    return super.run();
  }

  @Override
  String text(Lesson lesson, List<Groove> grooves) {
    return form.equals("tsv") ? StrokeList.tsv(grooves) : StrokeList.json(grooves);
  }
}
