package tabor.lsp;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.ide.Library;

/**
 * What the compiler made of each open file. Used by the worker alone, {@link #outdate} excepted:
 * the compiler keeps what it made of a file, so that the next version costs no more than what
 * changed.
 */
final class Analyses implements Library {
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
    tabor.parse.Reader reader = new tabor.parse.Reader();
    java.util.List<tabor.syntax.SectionSyntax> syntax = new java.util.ArrayList<>();
    java.util.List<tabor.diagnostic.Diagnostic> ds = new java.util.ArrayList<>();
    Map<tabor.source.Passage, Compiled.Where> places = new java.util.IdentityHashMap<>();
    int at = 0;
    for (tabor.source.Passage p : tabor.parse.Reader.passages(text)) {
      tabor.syntax.SectionSyntax read = reader.read(p);
      syntax.add(read);
      ds.addAll(read.problems());
      places.put(p, new Compiled.Where(path, at));
      at += p.text().length();
    }
    tabor.groove.Groove.Setting setting =
        new tabor.groove.Groove.Setting(
            tabor.rhythm.Meter.COMMON,
            tabor.kit.Kits.FIVE_PIECE,
            new tabor.rhythm.Tempo(tabor.rhythm.Time.of(1, 4), tabor.rhythm.Time.of(90)),
            tabor.rhythm.Feel.STRAIGHT,
            tabor.groove.Levels.DEFAULT,
            true,
            true);
    return new Compiled(
        path,
        text,
        new tabor.groove.Lesson("x", "x", null, setting, List.of()),
        syntax,
        ds,
        places);
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
    return workspace
        .read(path)
        .map(
            text -> {
              TextLines lines =
                  known != null && known.lines.text().equals(text)
                      ? known.lines
                      : TextLines.of(text);
              return of(new Document(Uris.of(path), path, true, 0, lines));
            });
  }

  @Override
  public Compiled trial(Path path, String text) {
    return compile(path, text);
  }

  @Override
  public List<Path> files() {
    return workspace.files();
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
