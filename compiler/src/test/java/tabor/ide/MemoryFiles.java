package tabor.ide;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.resolve.Options;

/** A few files in memory, compiled afresh each time. */
final class MemoryFiles implements Library, Loader {
  private final Map<Path, String> texts = new TreeMap<>();

  /** The files that were compiled because a feature asked for them. */
  final Set<String> asked = new TreeSet<>();

  static Path path(String name) {
    return Path.of("/class", name);
  }

  MemoryFiles put(String name, String text) {
    texts.put(path(name), text);
    return this;
  }

  /** The lessons in the folder of a real one, so that what it uses is there. */
  static MemoryFiles beside(Path real) throws IOException {
    MemoryFiles files = new MemoryFiles();
    Path folder = Objects.requireNonNull(real.getParent());
    try (Stream<Path> lessons = Files.list(folder)) {
      for (Path lesson : lessons.filter(one -> one.toString().endsWith(".tabor")).toList()) {
        files.put(lesson.getFileName().toString(), Files.readString(lesson));
      }
    }
    return files;
  }

  Compiled compiled(String name) {
    return trial(path(name), texts.get(path(name)));
  }

  static Compiled alone(String text) {
    return new MemoryFiles().put("a.tabor", text).compiled("a.tabor");
  }

  @Override
  public Found load(Path user, String written) {
    Path path = user.resolveSibling(written).normalize();
    String text = texts.get(path);
    return text == null ? Found.trouble(path, Trouble.MISSING) : Found.text(path, text);
  }

  @Override
  public Optional<Compiled> file(Path path) {
    asked.add(String.valueOf(path.getFileName()));
    return Optional.ofNullable(texts.get(path)).map(text -> trial(path, text));
  }

  @Override
  public Compiled trial(Path path, String text) {
    return trial(path, text, Options.NONE);
  }

  @Override
  public Compiled trial(Path path, String text, Options options) {
    return new Compiler(this).compile(path, text, options);
  }

  @Override
  public boolean mayUseOthers(Path path) {
    return texts.get(path).contains("use");
  }

  @Override
  public List<Path> files() {
    return List.copyOf(texts.keySet());
  }
}
