package tabor.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The files that outputs are written to before they take their names: {@code .NAME.PROCESS-N.part}
 * beside the output. They go away with the process, also on Ctrl-C; what a process left that was
 * killed without a warning is swept up later.
 */
final class PartFiles {
  private static final Pattern NAME = Pattern.compile("\\..+\\.(\\d{1,18})-\\d+\\.part");

  /** Somebody else's file may be younger: a process of another machine on the same disk. */
  private static final Duration OLD = Duration.ofHours(1);

  private static final Set<Path> OPEN = ConcurrentHashMap.newKeySet();

  /** True once the process is on its way out. */
  private static volatile boolean ending;

  private PartFiles() {}

  /** Makes an empty file for the bytes of an output. */
  static Path beside(Path output) throws IOException {
    Holder.hook();
    for (int number = 0; ; number++) {
      String name =
          "." + output.getFileName() + "." + ProcessHandle.current().pid() + "-" + number + ".part";
      Path part = output.resolveSibling(name);
      OPEN.add(part);
      try {
        Files.createFile(part);
        if (ending) {
          remove(part);
          throw new IOException("the command was stopped");
        }
        return part;
      } catch (FileAlreadyExistsException e) {
        // An earlier process had the same number and left it behind.
        OPEN.remove(part);
      } catch (IOException e) {
        OPEN.remove(part);
        throw e;
      }
    }
  }

  /** Takes a file away if it still has this name. */
  static void remove(Path part) throws IOException {
    Files.deleteIfExists(part);
    OPEN.remove(part);
  }

  /** Takes away what processes that are gone left in a folder an hour ago or longer. */
  static void sweep(Path folder) {
    // No path and no pattern for all that is there: an output folder may hold thousands of files.
    String[] called = folder.toFile().list((in, name) -> name.startsWith("."));
    for (String name : called == null ? new String[0] : called) {
      Matcher part = NAME.matcher(name);
      try {
        Path file = folder.resolve(name);
        if (part.matches() && isLeft(file, Long.parseLong(part.group(1)))) {
          Files.deleteIfExists(file);
        }
      } catch (IOException e) {
        // Leftovers do no harm; whether the folder can be written to is found out by writing.
        return;
      }
    }
  }

  private static boolean isLeft(Path part, long process) throws IOException {
    Instant written = Files.getLastModifiedTime(part).toInstant();
    return Files.isRegularFile(part)
        && written.isBefore(Instant.now().minus(OLD))
        && (process == ProcessHandle.current().pid() || ProcessHandle.of(process).isEmpty());
  }

  /** Asks the machine once to clear up at the end. */
  private static final class Holder {
    static {
      Runtime.getRuntime().addShutdownHook(new Thread(PartFiles::clear));
    }

    static void hook() {}
  }

  private static void clear() {
    ending = true;
    for (Path part : OPEN) {
      try {
        Files.deleteIfExists(part);
      } catch (IOException e) {
        // The folder is gone or cannot be written any more: nothing is left to do.
      }
    }
  }
}
