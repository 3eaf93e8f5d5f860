package tabor.lsp;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DiagnosticRelatedInformation;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.DiagnosticTag;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.Range;
import tabor.compile.Compiled;
import tabor.diagnostic.Code;
import tabor.source.Span;
import tabor.source.Spot;

/** From our values to the protocol's, for one compiled document. */
final class ToLsp {
  private final Session session;
  private final Compiled compiled;
  private final Document document;
  private final Map<Path, TextLines> others = new HashMap<>();

  ToLsp(Session session, Compiled compiled, Document document) {
    this.session = session;
    this.compiled = compiled;
    this.document = document;
  }

  /** A diagnostic with everything the client may show. */
  Diagnostic diagnostic(tabor.diagnostic.Diagnostic ours) {
    Diagnostic made = new Diagnostic();
    made.setRange(range(compiled.span(ours.spot())));
    made.setSeverity(severity(ours.code()));
    made.setCode(ours.code().word());
    made.setSource("tabor");
    made.setMessage(words(ours));
    if (ours.code() == Code.UNUSED_NAME || ours.code() == Code.ALREADY_THERE) {
      made.setTags(List.of(DiagnosticTag.Unnecessary));
    }
    if (!ours.labels().isEmpty()) {
      made.setRelatedInformation(
          ours.labels().stream()
              .map(label -> new DiagnosticRelatedInformation(location(label.spot()), label.text()))
              .toList());
    }
    return made;
  }

  /** Place, message and the way out. */
  static String words(tabor.diagnostic.Diagnostic ours) {
    String place = ours.place() == null ? "" : ours.place().words() + ": ";
    String help = ours.help() == null ? "" : "\n" + ours.help();
    return place + ours.message() + help;
  }

  private static DiagnosticSeverity severity(Code code) {
    return switch (code.severity()) {
      case ERROR -> DiagnosticSeverity.Error;
      case WARNING -> DiagnosticSeverity.Warning;
      case HINT -> DiagnosticSeverity.Hint;
    };
  }

  /** A span of the document. */
  Range range(Span span) {
    return session.encoding().range(document.lines(), span);
  }

  /** A spot, in this file or in one it uses. */
  Location location(Spot spot) {
    Path file = compiled.fileOf(spot);
    Span span = compiled.span(spot);
    if (file == null || file.equals(document.path())) {
      return new Location(document.uri(), range(span));
    }
    return new Location(uri(file), session.encoding().range(lines(file), span));
  }

  /** The URI that the client knows a file by. */
  String uri(Path file) {
    return session.documents().at(file).map(Document::uri).orElseGet(() -> Uris.of(file));
  }

  private TextLines lines(Path file) {
    return others.computeIfAbsent(
        file,
        path ->
            session
                .documents()
                .at(path)
                .map(Document::lines)
                .orElseGet(() -> TextLines.of(session.workspace().read(path).orElse(""))));
  }
}
