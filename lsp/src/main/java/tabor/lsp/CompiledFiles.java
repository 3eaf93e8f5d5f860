package tabor.lsp;

import java.nio.file.Path;
import java.util.Deque;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedDeque;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.resolve.Options;

/**
 * What the compiler made of each open file. Compiling happens in one lane alone; what came of it is
 * never changed, and every thread may read it. The compiler keeps what it made of a file, so that
 * the next version costs no more than what changed.
 */
final class CompiledFiles {
  /** So many versions of a file can be asked about before one has to be compiled again. */
  private static final int VERSIONS = 3;

  private final Map<Path, Deque<Entry>> entries = new ConcurrentHashMap<>();
  private final AtomicLong now = new AtomicLong();
  private final Workspace workspace;
  private final Compiler compiler;

  /** What the compiler knew when a file was opened or closed last. */
  private volatile Compiler.Known forOthers = Compiler.Known.NOTHING;

  /** Files asked for while one is compiled, whether they were there or not. */
  private final Set<Path> asked = new HashSet<>();

  private @Nullable Path folder;

  /**
   * A compiled version.
   *
   * @param moment after which change of any file
   * @param rests the files that were asked for, through any number of others
   */
  private record Entry(TextLines lines, long moment, Compiled compiled, Set<Path> rests) {}

  CompiledFiles(Workspace workspace) {
    this.workspace = workspace;
    this.compiler = new Compiler(this::load);
  }

  private Loader.Found load(Path user, String written) {
    Loader.Found found = workspace.load(folder, user, written);
    asked.add(found.path());
    return found;
  }

  /** Some file changed: what was compiled before may rest on its old text. */
  void outdate() {
    now.incrementAndGet();
  }

  /** The compiled form of a document as it is given, if there is one. */
  Optional<Compiled> known(OpenDocument document) {
    Deque<Entry> versions = entries.get(document.path());
    if (versions == null) {
      return Optional.empty();
    }
    long moment = now.get();
    return versions.stream()
        .filter(
            entry ->
                entry.lines == document.lines()
                    && (entry.moment == moment
                        || entry != versions.peekFirst()
                        || entry.rests.isEmpty()))
        .map(entry -> entry.compiled)
        .findFirst();
  }

  /** The compiled form of a document as it is given. In the typing lane alone. */
  Compiled of(OpenDocument document) {
    Optional<Compiled> known = known(document);
    if (known.isPresent()) {
      return known.get();
    }
    long moment = now.get();
    folder = document.path().getParent();
    asked.clear();
    Compiled compiled = compiler.compile(document.path(), document.text(), Options.NONE);
    Deque<Entry> versions =
        entries.computeIfAbsent(document.path(), path -> new ConcurrentLinkedDeque<>());
    versions.removeIf(entry -> entry.lines == document.lines());
    versions.addFirst(new Entry(document.lines(), moment, compiled, Set.copyOf(asked)));
    while (versions.size() > VERSIONS) {
      versions.removeLast();
    }
    return compiled;
  }

  /** Lets compilers of other lanes start from what is known now. In the typing lane alone. */
  void share() {
    forOthers = compiler.known();
  }

  /** What compilers of other lanes start from. */
  Compiler.Known forOthers() {
    return forOthers;
  }

  /** The files that a document rests on, through any number of others, there or not. */
  Set<Path> dependencies(Path path) {
    Deque<Entry> versions = entries.get(path);
    Entry newest = versions == null ? null : versions.peekFirst();
    return newest == null ? Set.of() : newest.rests;
  }

  /** Lets go of a file that is no longer open. In the typing lane alone. */
  void forget(Path path) {
    entries.remove(path);
    compiler.forget(path);
    share();
  }
}
