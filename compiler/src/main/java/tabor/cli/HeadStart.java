package tabor.cli;

import java.nio.file.Path;
import java.util.Set;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.resolve.Options;

/**
 * Compiles something on a second core while the command line is read and folders are listed: what
 * the first lesson would have to load and set up is there when it comes.
 */
final class HeadStart {
  /** Commands that read many lessons. */
  static final Set<String> HELPS = Set.of("find", "overview");

  private HeadStart() {}

  /** Begins, if there is a core to spare; never in the way of anything. */
  static void start() {
    if (Runtime.getRuntime().availableProcessors() > 1) {
      Thread thread = new Thread(HeadStart::compile, "warm-up");
      thread.setDaemon(true);
      thread.start();
    }
  }

  private static void compile() {
    new Compiler(Loader.NONE).compile(Path.of("warm-up.tabor"), Rehearsal.FINE, Options.NONE);
  }
}
