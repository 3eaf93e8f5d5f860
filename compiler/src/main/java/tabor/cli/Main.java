package tabor.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import tabor.cores.SpareCores;
import tabor.resolve.Options;
import tabor.source.VisibleText;

/** The program {@code tabor}. */
public final class Main {
  private Main() {}

  /** Runs one command and ends the process with its exit code. */
  public static void main(String[] args) {
    SpareCores.share(Runtime.getRuntime().availableProcessors() - 1);
    System.exit(run(args, Io.ofProcess()));
  }

  /** Runs one command; returns 0, 1 or 2 as {@link ExitCode} says. Never throws. */
  static int run(String[] args, Io io) {
    int code;
    try {
      if (args.length > 1 && HeadStart.HELPS.contains(args[0])) {
        HeadStart.start();
      }
      PlainWeave weave = PlainWeave.of(args);
      code =
          isPlainCheck(args)
              ? plainCheck(args, io)
              : weave != null ? weave.run(io) : Commands.run(args, io);
    } catch (Failure e) {
      code = complain(io, e);
    } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
      code = Faults.tell(io, e);
    }
    return finish(code, io);
  }

  /**
   * True for {@code check} with nothing but files. This is what people type all day: it goes past
   * the command line parser, which alone would take longer than reading a page.
   */
  private static boolean isPlainCheck(String[] args) {
    if (args.length < 2 || !args[0].equals("check")) {
      return false;
    }
    return isPlain(args, 1);
  }

  /** True if nothing from here on asks for the command line parser. */
  private static boolean isPlain(String[] args, int from) {
    for (int i = from; i < args.length; i++) {
      if (!isPlain(args[i])) {
        return false;
      }
    }
    return true;
  }

  /** True for a word that is no option. */
  static boolean isPlain(String word) {
    boolean option = word.startsWith("-") && !word.equals(SourceReader.STDIN);
    return !option && !word.startsWith("@") && !word.isEmpty();
  }

  private static int plainCheck(String[] args, Io io) {
    List<String> files = new ArrayList<>();
    for (int i = 1; i < args.length; i++) {
      files.add(args[i]);
    }
    return Check.run(io, files, Options.NONE, List.of(), Check.Style.TEXT, false, null);
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
