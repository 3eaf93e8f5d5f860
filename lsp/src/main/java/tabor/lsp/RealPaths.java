package tabor.lsp;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * One file has one path here, through whatever links to folders the client writes it; and what is
 * said to the client is written its way. A link to a file is a file of its own.
 */
final class RealPaths {
  /** The real folder, and how the client writes it, where that is different. */
  private final Map<Path, Path> written = new ConcurrentHashMap<>();

  /** The real path of a folder. */
  Path ofFolder(Path folder) {
    Path plain = folder.toAbsolutePath().normalize();
    Path real = resolved(plain);
    if (!real.equals(plain)) {
      written.put(real, plain);
    }
    return real;
  }

  /** The path of a file in its real folder. */
  Path ofFile(Path file) {
    Path plain = file.toAbsolutePath().normalize();
    Path name = plain.getFileName();
    Path parent = plain.getParent();
    return parent == null || name == null ? plain : ofFolder(parent).resolve(name);
  }

  /** What is there is resolved, what is not yet stays as it is. */
  private static Path resolved(Path path) {
    try {
      return path.toRealPath();
    } catch (IOException e) {
      Path parent = path.getParent();
      Path name = path.getFileName();
      return parent == null || name == null ? path : resolved(parent).resolve(name);
    }
  }

  /** A real path as the client would write it. */
  Path asWritten(Path real) {
    for (Path folder = real.getParent(); folder != null; folder = folder.getParent()) {
      Path other = written.get(folder);
      if (other != null) {
        return other.resolve(folder.relativize(real));
      }
    }
    return real;
  }
}
