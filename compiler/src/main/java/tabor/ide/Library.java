package tabor.ide;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import tabor.compile.Compiled;
import tabor.resolve.Options;

/** Where editor features get at other files, and at texts that nobody has written yet. */
public interface Library {
  /** A file that another one uses, compiled; empty if it cannot be read. */
  Optional<Compiled> file(Path path);

  /** The compiled form of a text that stands in for a file's own for the moment. */
  Compiled trial(Path path, String text);

  /** The same with what a student asks for over what the file says. */
  Compiled trial(Path path, String text, Options options);

  /** The files of the workspace, those that are open included. */
  List<Path> files();

  /**
   * False for a file that certainly uses no other. A look at its text, before all files of a folder
   * are compiled to find the few that matter.
   */
  default boolean mayUseOthers(Path path) {
    return true;
  }
}
