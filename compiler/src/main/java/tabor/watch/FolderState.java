package tabor.watch;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;

/**
 * What the files below a folder were like at one moment: sizes and times. Looked at again and again
 * instead of waiting for the system's notices, which are dropped when many come at once. Names with
 * a leading dot and links to folders are left out.
 */
public final class FolderState {
  /** Longer than the coarsest clock of a disk in use, which counts in two seconds. */
  private static final long HOT_MILLIS = 2500;

  private final Map<Path, Seen> files;

  private record Seen(long size, long stamp) {}

  private FolderState(Map<Path, Seen> files) {
    this.files = files;
  }

  /**
   * A folder as it is now.
   *
   * @param without a folder inside that is left out, such as the one that is written to
   */
  public static FolderState of(Path folder, Path without) {
    Map<Path, Seen> files = new HashMap<>();
    Path left = without.toAbsolutePath().normalize();
    try {
      Files.walkFileTree(
          folder,
          new SimpleFileVisitor<Path>() {
            @Override
            public FileVisitResult preVisitDirectory(Path path, BasicFileAttributes found) {
              boolean skipped =
                  !path.equals(folder)
                      && (path.getFileName().toString().startsWith(".")
                          || path.toAbsolutePath().normalize().equals(left));
              return skipped ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFile(Path path, BasicFileAttributes found) {
              if (!path.getFileName().toString().startsWith(".")) {
                long stamp = found.lastModifiedTime().to(TimeUnit.NANOSECONDS);
                files.put(path, new Seen(found.size(), stamp));
              }
              return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFileFailed(Path path, IOException gone) {
              // It went away between being listed and being looked at.
              return FileVisitResult.CONTINUE;
            }
          });
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new FolderState(files);
  }

  /** All files. */
  public Set<Path> files() {
    return Set.copyOf(files.keySet());
  }

  /** The files that are new, other or gone since an earlier state. */
  public Set<Path> since(FolderState before) {
    Set<Path> changed = new TreeSet<>();
    files.forEach(
        (path, seen) -> {
          if (!seen.equals(before.files.get(path))) {
            changed.add(path);
          }
        });
    before.files.keySet().stream().filter(path -> !files.containsKey(path)).forEach(changed::add);
    return changed;
  }

  /**
   * True if a file has nothing in it that had something in an earlier state: it may be in the
   * middle of being saved.
   */
  public boolean isEmptied(FolderState before) {
    for (Map.Entry<Path, Seen> file : files.entrySet()) {
      Seen earlier = before.files.get(file.getKey());
      if (file.getValue().size() == 0 && earlier != null && earlier.size() > 0) {
        return true;
      }
    }
    return false;
  }

  /**
   * The files that were written so shortly before a moment that they may be written once more
   * within the same tick of the disk's clock, unseen.
   *
   * @param millis the moment, in milliseconds since 1970
   */
  public Set<Path> hot(long millis) {
    Set<Path> hot = new TreeSet<>();
    files.forEach(
        (path, seen) -> {
          if (TimeUnit.NANOSECONDS.toMillis(seen.stamp()) > millis - HOT_MILLIS) {
            hot.add(path);
          }
        });
    return hot;
  }
}
