package tabor.lsp;

import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.Duration;
import org.jspecify.annotations.Nullable;
import tabor.lsp.startup.WarmUp;
import tabor.report.Version;

/** {@code tabor-lsp}: a language server over standard input and output. */
public final class ServerMain {
  private static final String HELP =
      """
      Usage: tabor-lsp [--log FILE]
      The language server of the Tabor groove notation. It speaks the Language Server
      Protocol 3.17 over standard input and output; an editor starts it.

        --stdio      accepted, and the default
        --log FILE   append what happens to FILE
        --version    print the version and stop
        --help       print this and stop

      Exit codes: 0 after shutdown and exit, 1 if the client left without, 2 wrong usage.
      """;

  /** A client that has left is not kept waiting for the end of the process. */
  static final Duration PATIENCE = Duration.ofMillis(400);

  private ServerMain() {}

  /** Serves until the client says exit, closes its end or dies. */
  public static void main(String[] args) {
    InputStream in = new FileInputStream(FileDescriptor.in);
    OutputStream out = new BufferedOutputStream(new FileOutputStream(FileDescriptor.out), 1 << 15);
    PrintStream text = System.out;
    // Whatever prints by mistake must not break the protocol.
    System.setOut(System.err);
    System.exit(run(args, in, out, text));
  }

  /** A second server goes through a session of its own while the client has nothing to say. */
  private static void warmUp(Connection connection) {
    int unused =
        Connection.serve(
            WarmUp.script(connection::isBusy),
            OutputStream.nullOutputStream(),
            Log.NONE,
            Version.TEXT);
  }

  static int run(String[] args, InputStream in, OutputStream out, PrintStream text) {
    @Nullable Path logFile = null;
    for (int i = 0; i < args.length; i++) {
      switch (args[i]) {
        case "--version" -> {
          text.println("tabor-lsp " + Version.TEXT);
          return 0;
        }
        case "--help", "-h" -> {
          text.print(HELP);
          return 0;
        }
        case "--stdio" -> {}
        case "--log" -> {
          if (++i == args.length) {
            System.err.println("tabor-lsp: --log needs a file");
            return 2;
          }
          logFile = Path.of(args[i]);
        }
        default -> {
          System.err.println("tabor-lsp: unknown argument " + args[i] + " (try --help)");
          return 2;
        }
      }
    }
    try {
      Log log = logFile == null ? Log.NONE : Log.to(logFile);
      log.takeLibraryLogs();
      Connection connection = new Connection(log, Version.TEXT, PATIENCE);
      WarmUp.start(() -> warmUp(connection));
      return connection.serve(in, out);
    } catch (IOException e) {
      System.err.println("tabor-lsp: cannot write " + logFile + ": " + e.getMessage());
      return 2;
    }
  }
}
