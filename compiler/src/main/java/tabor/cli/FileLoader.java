package tabor.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.compile.Loader;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;

/**
 * Finds files in use on disk. They must lie in the folder of the file that is compiled or below it,
 * by name and, behind links, in fact.
 */
final class FileLoader implements Loader {
  private final Path root;
  private final Map<Path, Path> names = new HashMap<>();

  /** For the file that is compiled; standard input counts as lying in the current folder. */
  FileLoader(Path compiled) {
    Path folder = compiled.getParent();
    this.root = folder == null ? Path.of("") : folder;
    Path real = real(compiled);
    if (real != null) {
      names.put(real, compiled);
    }
  }

  @Override
  public Found load(Path user, String written) {
    Path named;
    try {
      Path relative = Path.of(written);
      named = user.resolveSibling(relative).normalize();
      if (relative.isAbsolute() || !inside(root, named)) {
        return Found.trouble(named, Trouble.OUTSIDE);
      }
    } catch (InvalidPathException e) {
      return Found.trouble(user, Trouble.MISSING);
    }
    try {
      Path real = named.toRealPath();
      if (!real.startsWith(root.toRealPath())) {
        return Found.trouble(named, Trouble.OUTSIDE);
      }
      return read(names.computeIfAbsent(real, r -> named));
    } catch (NoSuchFileException e) {
      return Found.trouble(named, Trouble.MISSING);
    } catch (IOException e) {
      return Found.trouble(named, Trouble.UNREADABLE);
    }
  }

  /** True if a path lies in a folder or below it by its name. */
  static boolean inside(Path folder, Path named) {
    Path base = folder.toAbsolutePath().normalize();
    return named.toAbsolutePath().normalize().startsWith(base);
  }

  private static Found read(Path path) {
    if (!Files.isRegularFile(path)) {
      return Found.trouble(path, Trouble.UNREADABLE);
    }
    SourceReader.Read read = SourceReader.read(path, InputStream.nullInputStream());
    Diagnostic problem = read.problem();
    if (problem == null) {
      return Found.text(path, read.text());
    }
    boolean tooLong = problem.code() == Code.TOO_LONG;
    return Found.trouble(path, tooLong ? Trouble.TOO_LONG : Trouble.UNREADABLE);
  }

  private static @Nullable Path real(Path path) {
    try {
      return path.toRealPath();
    } catch (IOException e) {
      return null;
    }
  }
}
