package tabor.cli;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.diagnostic.Diagnostic;
import tabor.resolve.Options;
import tabor.weave.Lessons;

/**
 * Finds the lessons that one document shows, within the folder that was named, and notes every file
 * that was asked for. What several documents show is compiled once.
 */
final class PageLessons implements Lessons {
  private final Path root;
  private final ConcurrentMap<Asked, Shared> shared;
  private final Map<Path, Fingerprint> asked = new LinkedHashMap<>();

  /**
   * A lesson and the files that went into it.
   *
   * @param found as compiled, or why it is not there
   */
  record Shared(Found found, Map<Path, Fingerprint> files) {
    Shared {
      files = Map.copyOf(files);
    }
  }

  /** A file, and for whom it is worked out. */
  record Asked(Path file, Options options) {}

  /**
   * For one document.
   *
   * @param root nothing outside this folder is read
   * @param shared what was compiled for other documents of the run
   */
  PageLessons(Path root, ConcurrentMap<Asked, Shared> shared) {
    this.root = root;
    this.shared = shared;
  }

  /** An empty store for a run. */
  static ConcurrentMap<Asked, Shared> store() {
    return new ConcurrentHashMap<>();
  }

  /** The files that were asked for, as they were then. */
  Map<Path, Fingerprint> asked() {
    return asked;
  }

  @Override
  public Found find(Path document, String written, Options options) {
    Path named;
    try {
      Path relative = Path.of(written);
      named = document.resolveSibling(relative).normalize();
      if (relative.isAbsolute() || !FileLoader.inside(root, named)) {
        return Found.trouble("lies outside the folder " + shownRoot());
      }
    } catch (InvalidPathException e) {
      return Found.trouble("cannot be the name of a file");
    }
    if (!Files.exists(named)) {
      asked.put(named, Fingerprint.MISSING);
      return Found.trouble("is not there");
    }
    if (!DocumentFiles.real(named).startsWith(DocumentFiles.real(root))) {
      return Found.trouble("is a link that leads out of the folder " + shownRoot());
    }
    Shared lesson = shared.computeIfAbsent(new Asked(named, options), PageLessons::compile);
    asked.putAll(lesson.files());
    return lesson.found();
  }

  private String shownRoot() {
    return root.toString().isEmpty() ? "of the document" : root.toString();
  }

  private static Shared compile(Asked wanted) {
    Path file = wanted.file();
    Map<Path, Fingerprint> files = new LinkedHashMap<>();
    SourceReader.Read read = SourceReader.read(file, InputStream.nullInputStream());
    files.put(file, Fingerprint.of(file, read.text().getBytes(StandardCharsets.UTF_8)));
    Diagnostic problem = read.problem();
    if (problem != null) {
      return new Shared(Found.trouble("cannot be read: " + problem.message()), files);
    }
    Loader loader = noting(new FileLoader(file), files);
    Compiled compiled = new Compiler(loader).compile(file, read.text(), wanted.options());
    return new Shared(Found.of(compiled), files);
  }

  @Override
  public Loader loader(Path document) {
    return noting(new FileLoader(document), asked);
  }

  private static Loader noting(Loader loader, Map<Path, Fingerprint> files) {
    return (user, written) -> {
      Loader.Found found = loader.load(user, written);
      String text = found.text();
      files.put(
          found.path(),
          text == null
              ? Fingerprint.of(found.path())
              : Fingerprint.of(found.path(), text.getBytes(StandardCharsets.UTF_8)));
      return found;
    };
  }
}
