package tabor.lsp;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.ide.Catalog;
import tabor.ide.Library;
import tabor.resolve.Options;

/**
 * What the compiler made of each file. Used by the worker alone, {@link #outdate} excepted. The
 * compiler keeps what it made of a file, so that the next version costs no more than what changed.
 */
final class Analyses implements Library {
  private final Map<Path, Entry> entries = new HashMap<>();
  private final AtomicLong now = new AtomicLong();
  private final Workspace workspace;
  private final Compiler compiler;

  /** Compiles texts that nobody has written, so that these do not push out what is kept. */
  private final Compiler trials;

  private record Entry(TextLines lines, long moment, Compiled compiled) {}

  Analyses(Workspace workspace) {
    this.workspace = workspace;
    this.compiler = new Compiler(workspace);
    this.trials = new Compiler(workspace);
  }

  /** Some file changed: what was compiled before may rest on its old text. */
  void outdate() {
    now.incrementAndGet();
  }

  /** The compiled form of a document as it is given. */
  Compiled of(Document document) {
    Entry known = entries.get(document.path());
    long moment = now.get();
    if (known != null && known.moment == moment && known.lines == document.lines()) {
      return known.compiled;
    }
    workspace.compiling(document.path());
    Compiled compiled = compiler.compile(document.path(), document.text(), Options.NONE);
    entries.put(document.path(), new Entry(document.lines(), moment, compiled));
    return compiled;
  }

  @Override
  public Optional<Compiled> file(Path path) {
    Optional<Document> open = workspace.open(path);
    if (open.isPresent()) {
      return open.map(this::of);
    }
    Entry known = entries.get(path);
    if (known != null && known.moment == now.get()) {
      return Optional.of(known.compiled);
    }
    return workspace.read(path).map(text -> of(onDisk(path, text, known)));
  }

  private static Document onDisk(
      Path path, String text, @org.jspecify.annotations.Nullable Entry known) {
    boolean same = known != null && known.lines.text().equals(text);
    return new Document(Uris.of(path), path, true, 0, same ? known.lines : TextLines.of(text));
  }

  @Override
  public Compiled trial(Path path, String text) {
    workspace.compiling(path);
    return trials.compile(path, text, Options.NONE);
  }

  @Override
  public List<Path> files() {
    return workspace.files();
  }

  /** The files that a document names or rests on, itself left out. */
  Set<Path> dependencies(Path path) {
    Entry known = entries.get(path);
    if (known == null) {
      return Set.of();
    }
    List<Path> named = Catalog.uses(known.compiled);
    if (named.isEmpty()) {
      return Set.of();
    }
    Set<Path> found = new HashSet<>(named);
    known.compiled.places().values().forEach(where -> found.add(where.file()));
    found.remove(path);
    return found;
  }

  /** Lets go of a file that is no longer open. */
  void forget(Path path) {
    entries.remove(path);
    compiler.forget(path);
    trials.forget(path);
  }
}
