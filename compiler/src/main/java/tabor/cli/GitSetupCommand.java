package tabor.cli;

import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code tabor git-setup}: makes one git repository show and merge lessons as music. */
@Command(
    name = "git-setup",
    description = {
      "Makes the git repository that you are in show and merge lessons as music.",
      "git diff says what changed in the music, git log -p and git show print counted grids, and",
      "git merge merges lessons statement by statement.",
      "Every line that is set is said. A second time changes nothing."
    })
final class GitSetupCommand implements Callable<Integer> {
  private final Io io;

  @Option(names = "--remove", description = "Take out exactly what this command has set.")
  private boolean remove;

  @Option(
      names = "--program",
      paramLabel = "WORDS",
      description = "How git is to call Tabor; tabor if not given.")
  private @Nullable String program;

  GitSetupCommand(Io io) {
    this.io = io;
  }

  @Override
  public Integer call() {
    GitSetup setup = new GitSetup(io, Git.here());
    if (remove) {
      return setup.remove();
    }
    return setup.write(program == null ? "tabor" : program);
  }
}
