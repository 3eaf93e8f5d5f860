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
final class OpenDocuments {
  private final RealPaths paths;
  private final Map<Path, OpenDocument> open = new ConcurrentHashMap<>();

  /** The URIs that were opened, as written. */
  private final Map<String, Path> byUri = new ConcurrentHashMap<>();

  private final AtomicInteger made = new AtomicInteger();

  OpenDocuments(RealPaths paths) {
    this.paths = paths;
  }

  /** Opens a file, or opens it anew. */
  OpenDocument open(TextDocumentItem item) {
    String text = item.getText() == null ? "" : item.getText();
    Optional<Path> file = Uris.path(item.getUri()).map(paths::ofFile);
    Path path = file.orElseGet(() -> standIn(item.getUri()));
    OpenDocument document =
        new OpenDocument(
            item.getUri(), path, file.isPresent(), item.getVersion(), TextLines.of(text));
    byUri.put(item.getUri(), path);
    open.put(path, document);
    return document;
  }

  /** A text without a file gets a path of its own, in a folder that does not exist. */
  private Path standIn(String uri) {
    Path known = byUri.get(uri);
    return known != null
        ? known
        : Path.of("/no-file-" + made.incrementAndGet(), "unsaved.tabor").toAbsolutePath();
  }

  /** Changes an open file; empty if it is not open. */
  Optional<OpenDocument> change(
      VersionedTextDocumentIdentifier id,
      List<TextDocumentContentChangeEvent> changes,
      PositionEncoding encoding) {
    return find(id.getUri())
        .map(
            before -> {
              OpenDocument after = before.changed(id.getVersion(), changes, encoding);
              open.put(after.path(), after);
              return after;
            });
  }

  /** Closes a file; what it was, if it was open. */
  Optional<OpenDocument> close(String uri) {
    Optional<Path> path = pathOf(uri);
    path.ifPresent(gone -> byUri.values().removeIf(gone::equals));
    return path.map(open::remove);
  }

  /** The open file of this URI. */
  Optional<OpenDocument> find(String uri) {
    return pathOf(uri).flatMap(this::at);
  }

  /** The open file at this path. */
  Optional<OpenDocument> at(Path path) {
    return Optional.ofNullable(open.get(path));
  }

  /** All open files. */
  Collection<OpenDocument> all() {
    return List.copyOf(open.values());
  }

  /** The path that a URI stands for here; empty for one without a file that is not open. */
  private Optional<Path> pathOf(String uri) {
    return Optional.ofNullable(byUri.get(uri)).or(() -> Uris.path(uri).map(paths::ofFile));
  }
}
