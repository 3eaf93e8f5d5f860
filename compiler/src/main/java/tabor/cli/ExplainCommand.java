package tabor.cli;

import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import tabor.diagnostic.Code;
import tabor.diagnostic.Explanation;
import tabor.diagnostic.Severity;

/** {@code tabor explain}: the page on a code, or the list of them. */
@Command(
    name = "explain",
    description = "Explains a diagnostic with an example and its fix; without CODE lists them.")
final class ExplainCommand implements Callable<Integer> {
  private final Io io;

  @Parameters(
      arity = "0..1",
      paramLabel = "CODE",
      description = "The word in square brackets after a diagnostic, such as bar-length.")
  private @Nullable String code;

  ExplainCommand(Io io) {
    this.io = io;
  }

  @Override
  public Integer call() {
    if (code == null) {
      list();
      return ExitCode.FINE;
    }
    Code known =
        Code.of(code)
            .orElseThrow(
                () -> Failure.usage("there is no code " + code + "; tabor explain lists them"));
    io.out().print(Explanation.of(known).plain());
    return ExitCode.FINE;
  }

  private void list() {
    int width = 0;
    for (Code each : Code.values()) {
      width = Math.max(width, each.word().length());
    }
    for (Severity severity : Severity.values()) {
      io.out().print(severity.word() + "s\n");
      for (Code each : Code.values()) {
        if (each.severity() == severity) {
          String word = each.word();
          io.out()
              .print(
                  "  "
                      + word
                      + " ".repeat(width + 2 - word.length())
                      + Explanation.of(each).summary()
                      + "\n");
        }
      }
    }
  }
}
