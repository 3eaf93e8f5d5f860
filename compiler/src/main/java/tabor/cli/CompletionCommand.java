package tabor.cli;

import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;

/** {@code tabor completion}: what a shell needs to complete our words. */
@Command(
    name = "completion",
    description = "Prints a completion script: source <(tabor completion) in bash or zsh.")
final class CompletionCommand implements Callable<Integer> {
  private final Io io;

  CompletionCommand(Io io) {
    this.io = io;
  }

  @Override
  public Integer call() {
    io.out().print(AutoComplete.bash("tabor", Commands.line(io, null)));
    return ExitCode.FINE;
  }
}
