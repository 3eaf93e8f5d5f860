package tabor.weave;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;

/**
 * What is wrong with a block, or worth a look.
 *
 * @param file the document, or the lesson that a block names
 * @param line its line there, from 1; 0 for the file as a whole
 * @param column from 1, in characters of the line
 * @param severity an error keeps the document from being written
 * @param message one sentence without a full stop
 * @param help what would fix it; null where nothing is to be said
 * @param report the same as a person reads it on a terminal, ending in an empty line
 */
public record Problem(
    Path file,
    int line,
    int column,
    Severity severity,
    String message,
    @Nullable String help,
    String report) {

  /** A problem that is not the compiler's. */
  public static Problem error(
      Path file, int line, int column, String message, @Nullable String help) {
    String place = file + (line == 0 ? "" : ":" + line + ":" + column);
    String report =
        place + ": error: " + message + "\n" + (help == null ? "" : "  fix:  " + help + "\n");
    return new Problem(file, line, column, Severity.ERROR, message, help, report + "\n");
  }

  /** What the compiler noticed. */
  static Problem of(Diagnostic diagnostic, Path file, int line, int column, String report) {
    String help = diagnostic.help();
    if (help == null && !diagnostic.fixes().isEmpty()) {
      help = diagnostic.fixes().get(0).title();
    }
    return new Problem(
        file, line, column, diagnostic.severity(), diagnostic.message(), help, report);
  }

  /** True if nothing can be made of the document. */
  public boolean isError() {
    return severity == Severity.ERROR;
  }

  /** {@code page.md:12: the bar is too long}. */
  public String words() {
    return file + (line == 0 ? "" : ":" + line) + ": " + message;
  }
}
