package tabor.lsp;

import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;

/**
 * The open files. Changes come from the one thread that reads messages; any thread may look. Two
 * spellings of one URI are one file.
 */
final class Documents {
  private final Map<Path, Document> open = new ConcurrentHashMap<>();
  private final Map<String, Path> standIns = new ConcurrentHashMap<>();
  private final AtomicInteger made = new AtomicInteger();

  /** Opens a file, or opens it anew. */
  Document open(TextDocumentItem item) {
    String text = item.getText() == null ? "" : item.getText();
    Optional<Path> file = Uris.path(item.getUri());
    Document document =
        new Document(
            item.getUri(),
            file.orElseGet(() -> standIn(item.getUri())),
            file.isPresent(),
            item.getVersion(),
            TextLines.of(text));
    open.put(document.path(), document);
    return document;
  }

  /** Changes an open file; empty if it is not open. */
  Optional<Document> change(
      VersionedTextDocumentIdentifier id,
      List<TextDocumentContentChangeEvent> changes,
      PositionEncoding encoding) {
    return find(id.getUri())
        .map(
            before -> {
              Document after = before.changed(id.getVersion(), changes, encoding);
              open.put(after.path(), after);
              return after;
            });
  }

  /** Closes a file; what it was, if it was open. */
  Optional<Document> close(String uri) {
    Optional<Path> path = pathOf(uri);
    standIns.remove(uri);
    return path.map(open::remove);
  }

  /** The open file of this URI. */
  Optional<Document> find(String uri) {
    return pathOf(uri).flatMap(this::at);
  }

  /** The open file at this path. */
  Optional<Document> at(Path path) {
    return Optional.ofNullable(open.get(path));
  }

  /** All open files. */
  Collection<Document> all() {
    return List.copyOf(open.values());
  }

  /** The path that a URI stands for here; empty for one without a file that is not open. */
  Optional<Path> pathOf(String uri) {
    return Uris.path(uri).or(() -> Optional.ofNullable(standIns.get(uri)));
  }

  /** A text without a file gets a path of its own, in a folder that does not exist. */
  private Path standIn(String uri) {
    return standIns.computeIfAbsent(
        uri, u -> Path.of("/no-file-" + made.incrementAndGet(), "unsaved.tabor"));
  }
}
