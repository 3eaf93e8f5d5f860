package tabor.lsp;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.TextDocumentEdit;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import tabor.compile.Compiled;
import tabor.ide.References;
import tabor.source.Span;
import tabor.source.Spot;

/** From our values to the protocol's, for one compiled file. */
final class LspConverter {
  private final Session session;
  private final Compiled compiled;
  private final Map<Path, TextLines> texts = new HashMap<>();

  /** For a file as it was compiled, which may be older than what is open by now. */
  LspConverter(Session session, Compiled compiled, OpenDocument document) {
    this.session = session;
    this.compiled = compiled;
    texts.put(document.path(), document.lines());
  }

  /** For a file that need not be open. */
  LspConverter(Session session, Compiled compiled, Path path) {
    this.session = session;
    this.compiled = compiled;
    texts.put(path, TextLines.of(compiled.text()));
  }

  /** A spot, in this file or in one it uses. */
  Location location(Spot spot) {
    Path file = compiled.fileOf(spot);
    return location(file == null ? compiled.file() : file, compiled.span(spot));
  }

  /** A place in any file. */
  Location location(References.Place place) {
    texts.computeIfAbsent(place.compiled().file(), path -> TextLines.of(place.compiled().text()));
    return location(place.compiled().file(), place.span());
  }

  private Location location(Path file, Span span) {
    return new Location(uri(file), session.encoding().range(lines(file), span));
  }

  /** The URI that the client knows a file by. */
  String uri(Path file) {
    return session.workspace().uri(file);
  }

  private TextLines lines(Path file) {
    return texts.computeIfAbsent(
        file,
        path ->
            session
                .documents()
                .at(path)
                .map(OpenDocument::lines)
                .orElseGet(() -> TextLines.of(session.workspace().read(path).orElse(""))));
  }

  /** A change of one file. */
  record Change(Path file, TextEdit edit) {}

  /** A place with a new text. */
  Change replacement(References.Place place, String text) {
    return new Change(place.compiled().file(), new TextEdit(location(place).getRange(), text));
  }

  /** A span of this file with a new text. */
  Change replacement(Span span, String text) {
    return new Change(
        compiled.file(), new TextEdit(location(compiled.file(), span).getRange(), text));
  }

  /** Changes as one edit: with versions where the client can take them. */
  WorkspaceEdit edit(List<Change> changes) {
    Map<Path, List<TextEdit>> byFile = new LinkedHashMap<>();
    for (Change change : changes) {
      byFile.computeIfAbsent(change.file(), file -> new ArrayList<>()).add(change.edit());
    }
    if (!session.capabilities().has("workspace", "workspaceEdit", "documentChanges")) {
      Map<String, List<TextEdit>> plain = new LinkedHashMap<>();
      byFile.forEach((file, edits) -> plain.put(uri(file), edits));
      return new WorkspaceEdit(plain);
    }
    WorkspaceEdit made = new WorkspaceEdit();
    List<Either<TextDocumentEdit, org.eclipse.lsp4j.ResourceOperation>> all = new ArrayList<>();
    byFile.forEach(
        (file, edits) -> {
          Integer version = session.documents().at(file).map(OpenDocument::version).orElse(null);
          TextDocumentEdit one = new TextDocumentEdit();
          one.setTextDocument(new VersionedTextDocumentIdentifier(uri(file), version));
          one.setEdits(
              edits.stream()
                  .map(edit -> Either.<TextEdit, org.eclipse.lsp4j.SnippetTextEdit>forLeft(edit))
                  .toList());
          all.add(Either.forLeft(one));
        });
    made.setDocumentChanges(all);
    return made;
  }
}
