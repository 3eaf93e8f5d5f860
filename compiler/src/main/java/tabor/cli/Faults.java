package tabor.cli;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tabor.source.VisibleText;

/** What is said when something goes wrong inside Tabor: one sentence, and a trace if asked for. */
final class Faults {
  private Faults() {}

  /**
   * What became of work on one lesson that is told in its turn.
   *
   * @param said what it said on the way
   * @param good false if something stopped it
   * @param result what came of it; null if something stopped it, or nothing came
   */
  record Done<T>(String said, boolean good, @Nullable T result) {}

  /** A fault while a lesson was worked on. */
  static final class OfLesson extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final String lesson;

    OfLesson(String lesson, Throwable cause) {
      super(cause);
      this.lesson = lesson;
    }
  }

  /**
   * Works on one lesson. What stops it is told with the lesson's name, and the caller goes on with
   * the next.
   *
   * @param lesson as it was named on the command line
   * @return true if the work was done
   */
  static boolean catching(Io io, String lesson, Runnable work) {
    try {
      work.run();
      return true;
    } catch (Failure e) {
      if (e.code() != ExitCode.ERRORS) {
        throw e;
      }
      Main.complain(io, e);
    } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
      tell(io, new OfLesson(lesson, e));
    }
    return false;
  }

  /** {@linkplain #catching Works on one lesson}; what is said meanwhile is kept. */
  static <T> Done<T> aside(Io io, Path lesson, Function<Io, @Nullable T> work) {
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    Io aside = io.withErr(said);
    List<@Nullable T> results = new ArrayList<>();
    boolean good = catching(aside, lesson.toString(), () -> results.add(work.apply(aside)));
    aside.err().flush();
    return new Done<>(
        said.toString(StandardCharsets.UTF_8), good, results.isEmpty() ? null : results.get(0));
  }

  /** Says what went wrong inside Tabor; returns the exit code. */
  static int tell(Io io, Throwable thrown) {
    String lesson = thrown instanceof OfLesson named ? named.lesson + ": " : "";
    Throwable cause = thrown.getCause();
    Throwable fault = thrown instanceof OfLesson && cause != null ? cause : thrown;
    io.out().flush();
    io.err()
        .print(
            "tabor: "
                + VisibleText.line(
                    lesson + "this went wrong inside Tabor, not in your file: " + words(fault))
                + "\n       Please report it; with TABOR_TRACE=1 it says where.\n");
    if (!io.env().getOrDefault("TABOR_TRACE", "").isEmpty()) {
      fault.printStackTrace(io.err());
    }
    return ExitCode.ERRORS;
  }

  private static String words(Throwable fault) {
    if (fault instanceof OutOfMemoryError) {
      return "the memory does not suffice; with TABOR_HEAP=2g it gets more";
    }
    return fault instanceof StackOverflowError ? "something is nested too deep" : fault.toString();
  }
}
