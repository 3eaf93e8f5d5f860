package tabor.lsp;

import java.nio.file.Path;
import java.util.List;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.jspecify.annotations.Nullable;
import tabor.source.Span;

/**
 * An open file as the client has it, at one version.
 *
 * @param uri as the client writes it
 * @param path where it lies, or a stand-in of our own for a text that has no file
 * @param onDisk false for a text that has no file
 * @param version the client's number
 * @param lines the text
 */
record OpenDocument(String uri, Path path, boolean onDisk, int version, TextLines lines) {
  /** The text. */
  String text() {
    return lines.text();
  }

  /** The document after the changes of one notification, in their order. */
  OpenDocument changed(
      @Nullable Integer to,
      List<TextDocumentContentChangeEvent> changes,
      PositionEncoding encoding) {
    TextLines now = lines;
    for (TextDocumentContentChangeEvent change : changes) {
      String text = change.getText() == null ? "" : change.getText();
      if (change.getRange() == null) {
        now = TextLines.of(text);
      } else {
        Span span = encoding.span(now, change.getRange());
        now = now.replace(span.start(), span.end(), text);
      }
    }
    return new OpenDocument(uri, path, onDisk, to == null ? version + 1 : to, now);
  }
}
