package tabor.lsp;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.Location;
import tabor.compile.Compiled;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.lsp.transport.JsonText;

/** The diagnostics of a file as JSON, with what this client can show and nothing else. */
final class DiagnosticWriter {
  private final OpenDocument document;
  private final PositionEncoding encoding;
  private final LspConverter converter;
  private final Compiled compiled;
  private final boolean related;
  private final boolean described;
  private final List<Integer> tags;
  private final JsonText json = new JsonText();

  private DiagnosticWriter(Session session, Compiled compiled, OpenDocument document) {
    this.document = document;
    this.compiled = compiled;
    this.encoding = session.encoding();
    this.converter = new LspConverter(session, compiled, document);
    ClientCapabilities can = session.capabilities();
    String[] at = {"textDocument", "publishDiagnostics"};
    this.related = can.has(at[0], at[1], "relatedInformation");
    this.described = can.has(at[0], at[1], "codeDescriptionSupport");
    this.tags = can.numbers(at[0], at[1], "tagSupport", "valueSet");
  }

  /** A list of them. */
  static JsonText write(Session session, Compiled compiled, OpenDocument document) {
    DiagnosticWriter writer = new DiagnosticWriter(session, compiled, document);
    writer.json.add("[");
    compiled.diagnostics().forEach(writer::one);
    return writer.json.add("]");
  }

  private void one(Diagnostic ours) {
    Path file = compiled.fileOf(ours.spot());
    json.comma().add("{\"range\":");
    if (file == null || file.equals(document.path())) {
      PositionEncoding.write(json, encoding.range(document.lines(), compiled.span(ours.spot())));
    } else {
      PositionEncoding.write(json, converter.location(ours.spot()).getRange());
    }
    json.add(",\"severity\":").add(severity(ours.code()));
    json.add(",\"code\":").string(ours.code().word());
    if (described) {
      Optional<String> page = DiagnosticPages.of(ours.code());
      if (page.isPresent()) {
        json.add(",\"codeDescription\":{\"href\":").string(page.get()).add("}");
      }
    }
    json.add(",\"source\":\"tabor\",\"message\":").string(message(ours));
    if (ours.code().isIdle() && tags.contains(1)) {
      json.add(",\"tags\":[1]");
    }
    if (related && !ours.labels().isEmpty()) {
      json.add(",\"relatedInformation\":[");
      for (Diagnostic.Label label : ours.labels()) {
        Location location = converter.location(label.spot());
        json.comma().add("{\"location\":{\"uri\":").string(location.getUri());
        PositionEncoding.write(json.add(",\"range\":"), location.getRange());
        json.add("},\"message\":").string(label.text()).add("}");
      }
      json.add("]");
    }
    json.add("}");
  }

  private String message(Diagnostic ours) {
    if (related || ours.labels().isEmpty()) {
      return words(ours, "");
    }
    StringBuilder others = new StringBuilder();
    for (Diagnostic.Label label : ours.labels()) {
      int line = converter.location(label.spot()).getRange().getStart().getLine() + 1;
      others.append("\nline ").append(line).append(": ").append(label.text());
    }
    return words(ours, others.toString());
  }

  /** Place, message, the other places for a client that cannot show them, and the way out. */
  static String words(Diagnostic ours, String others) {
    String help = ours.help() == null ? "" : "\n" + ours.help();
    return head(ours) + others + help;
  }

  /** What the words of a diagnostic begin with whatever the client can show: place and message. */
  static String head(Diagnostic ours) {
    return (ours.place() == null ? "" : ours.place().words() + ": ") + ours.message();
  }

  private static int severity(Code code) {
    return switch (code.severity()) {
      case ERROR -> 1;
      case WARNING -> 2;
      case HINT -> 4;
    };
  }
}
