package tabor.cli;

import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code tabor check}: the words of its command line. */
@Command(name = "check", description = "Says what is wrong in lessons, and what would fix it.")
final class CheckCommand implements Callable<Integer> {
  private final Io io;

  @Parameters(
      arity = "1..*",
      paramLabel = "FILE|FOLDER",
      description = "What to check; - is standard input.")
  private List<String> words = List.of();

  @Option(
      names = "--report",
      paramLabel = "FORM",
      description = "text (as people read it), json or sarif (SARIF 2.1.0); text if not given.")
  private String report = "text";

  @Option(names = "--hints", description = "Print hints too.")
  private boolean hints;

  @Option(
      names = "--docs",
      paramLabel = "URL",
      description = "Where the pages on the codes are published, for links in a SARIF report.")
  private @Nullable String docs;

  @Mixin private PlayerOptions player = new PlayerOptions();

  CheckCommand(Io io) {
    this.io = io;
  }

  @Override
  public Integer call() {
    Check.Style style =
        switch (report) {
          case "text" -> Check.Style.TEXT;
          case "json" -> Check.Style.JSON;
          case "sarif" -> Check.Style.SARIF;
          default -> throw Failure.usage("--report takes text, json or sarif, not " + report);
        };
    return Check.run(io, words, player.options(), player.students(), style, hints, docs);
  }
}
