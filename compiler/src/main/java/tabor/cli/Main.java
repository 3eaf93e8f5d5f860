package tabor.cli;

import java.io.IOException;
import tabor.cores.SpareCores;
import tabor.source.VisibleText;

/** The program {@code tabor}. */
public final class Main {
  private Main() {}

  /** Runs one command and ends the process with its exit code. */
  public static void main(String[] args) {
    prepare();
    System.exit(run(args, Io.ofProcess()));
  }

  /** What holds for the whole process. */
  static void prepare() {
    keepLibrariesQuiet();
    SpareCores.share(Runtime.getRuntime().availableProcessors() - 1);
  }

  /**
   * What reads fonts and writes PDF has a log, which nobody sees here. To look for a place to write
   * it to takes longer than to write a small page.
   */
  private static void keepLibrariesQuiet() {
    String logging = "org.apache.commons.logging.";
    System.setProperty(logging + "LogFactory", logging + "impl.LogFactoryImpl");
    System.setProperty(logging + "Log", logging + "impl.NoOpLog");
  }

  /** Runs one command; returns 0, 1 or 2 as {@link ExitCode} says. Never throws. */
  static int run(String[] args, Io io) {
    int code;
    try {
      if (args.length > 1 && HeadStart.HELPS.contains(args[0])) {
        HeadStart.start();
      }
      PlainWords plain = PlainWords.of(args);
      code = plain == null ? Commands.run(args, io) : plain.run(io);
    } catch (Failure e) {
      code = complain(io, e);
    } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
      code = Faults.tell(io, e);
    }
    return finish(code, io);
  }

  /** Says why a command cannot go on. */
  static int complain(Io io, Failure failure) {
    io.out().flush();
    io.err().print("tabor: " + VisibleText.line(String.valueOf(failure.getMessage())) + "\n");
    return failure.code();
  }

  private static int finish(int code, Io io) {
    io.out().flush();
    IOException trouble = io.outTrouble().first();
    int end = code;
    if (trouble != null && !io.outTrouble().readerGone()) {
      io.err().print("tabor: cannot write the output: " + SourceReader.reason(trouble) + "\n");
      end = Math.max(code, ExitCode.ERRORS);
    }
    io.err().flush();
    return end;
  }
}
