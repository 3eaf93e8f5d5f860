package tabor.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tabor.watch.LiveServer;

/** {@code tabor watch}: a folder in the browser, kept up to date. */
@Command(
    name = "watch",
    description = "Shows a folder's lessons and documents in a browser, and follows every change.",
    footer = {
      "",
      "The pages are served to this machine alone. What is wrong is shown on them until it is",
      "fixed. Ctrl-C ends it."
    })
final class WatchCommand implements Callable<Integer> {
  private static final long PAUSE_MILLIS = 150;

  private final Io io;

  @Parameters(index = "0", paramLabel = "FOLDER", description = "The folder to watch.")
  private String folder = "";

  @Option(
      names = {"-o", "--out"},
      paramLabel = "DIR",
      description = "Keep the pages in this folder; if not given they go away at the end.")
  private @Nullable String out;

  @Option(
      names = "--port",
      paramLabel = "N",
      description = "The port, or the next free one after it; ${DEFAULT-VALUE} if not given.",
      defaultValue = "8640")
  private int port;

  WatchCommand(Io io) {
    this.io = io;
  }

  @Override
  public Integer call() {
    Path watched = SourceFiles.path(folder);
    if (!Files.isDirectory(watched)) {
      throw Failure.usage(folder + " is no folder");
    }
    if (port < 0 || port > 65535) {
      throw Failure.usage("--port takes a number from 0 to 65535, not " + port);
    }
    String kept = out;
    Path output = kept == null ? temporary() : SourceFiles.path(kept);
    if (DocumentFiles.real(output).equals(DocumentFiles.real(watched))) {
      throw Failure.usage("the pages need another folder than " + folder);
    }
    Thread cleaning = new Thread(() -> clean(kept == null ? output : null));
    Runtime.getRuntime().addShutdownHook(cleaning);
    OutputFiles.makeFolder(output);
    Watch watch = new Watch(io, watched, output);
    watch.look();
    try (LiveServer server = LiveServer.start(port, watch)) {
      if (port != 0 && server.port() != port) {
        io.err().print("tabor: port " + port + " is taken\n");
      }
      io.out().print(folder + " is at " + server.address() + " (Ctrl-C ends it)\n");
      tell(watch);
      server.changed(Set.of(), watch.problems());
      follow(watch, server);
    } catch (IOException e) {
      throw Failure.outside("no port from " + port + " on is free: " + SourceReader.reason(e));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return ExitCode.FINE;
  }

  private void follow(Watch watch, LiveServer server) throws InterruptedException {
    List<String> before = watch.problems();
    while (true) {
      Thread.sleep(PAUSE_MILLIS);
      Set<String> changed;
      try {
        changed = watch.look();
      } catch (Failure | UncheckedIOException e) {
        // A folder that is being moved or a full disk: it may be well again the next time.
        io.err().print("tabor: " + e.getMessage() + "\n");
        io.err().flush();
        Thread.sleep(2000);
        continue;
      }
      if (changed == null) {
        continue;
      }
      server.changed(changed, watch.problems());
      if (!watch.problems().equals(before)) {
        tell(watch);
        before = watch.problems();
      }
    }
  }

  private void tell(Watch watch) {
    List<String> problems = watch.problems();
    problems.forEach(problem -> io.err().print(problem + "\n\n"));
    io.out().print(problems.isEmpty() ? "no problems\n" : "");
    io.err().flush();
    io.out().flush();
  }

  private static Path temporary() {
    try {
      return Files.createTempDirectory("tabor-watch-");
    } catch (IOException e) {
      throw Failure.outside("no folder can be made for the pages: " + SourceReader.reason(e));
    }
  }

  private static void clean(@Nullable Path temporary) {
    if (temporary == null) {
      return;
    }
    try (Stream<Path> all = Files.walk(temporary)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(path);
      }
    } catch (IOException | UncheckedIOException e) {
      // The system clears its folder for such things by itself.
      return;
    }
  }
}
