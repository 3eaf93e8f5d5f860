package tabor.lsp;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.logging.Handler;
import java.util.logging.LogManager;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.jspecify.annotations.Nullable;

/** Where the server writes what nobody asked for: a file, or nothing. Never standard output. */
final class Log {
  /** Writes nothing. */
  static final Log NONE = new Log(null);

  private final @Nullable PrintStream out;

  private Log(@Nullable PrintStream out) {
    this.out = out;
  }

  /** A log to a stream, flushed after every line. */
  static Log to(java.io.OutputStream out) {
    return new Log(new PrintStream(out, true, StandardCharsets.UTF_8));
  }

  /** A log at the end of a file. */
  static Log to(Path file) throws IOException {
    return new Log(
        new PrintStream(
            new java.io.FileOutputStream(file.toFile(), true), true, StandardCharsets.UTF_8));
  }

  /** Writes a line. */
  void say(String line) {
    if (out != null) {
      out.println(
          LocalTime.now(ZoneId.systemDefault()).truncatedTo(ChronoUnit.MILLIS) + " " + line);
    }
  }

  /** Writes what went wrong, with its trace. */
  void say(String line, @Nullable Throwable problem) {
    if (problem == null) {
      say(line);
    } else if (out != null) {
      synchronized (out) {
        say(line);
        problem.printStackTrace(out);
      }
    }
  }

  /** The library logs through the JDK; its console handler would write to standard error. */
  void takeLibraryLogs() {
    LogManager.getLogManager().reset();
    Logger.getLogger("")
        .addHandler(
            new Handler() {
              @Override
              public void publish(LogRecord entry) {
                if (entry.getThrown() == null) {
                  say(entry.getMessage());
                } else {
                  say(entry.getMessage(), entry.getThrown());
                }
              }

              @Override
              public void flush() {}

              @Override
              public void close() {}
            });
  }
}
