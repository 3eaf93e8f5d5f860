package tabor.lsp;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentOnTypeFormattingParams;
import org.eclipse.lsp4j.DocumentRangeFormattingParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextEdit;
import tabor.format.Formatter;
import tabor.lsp.Scheduler.Lane;
import tabor.lsp.transport.JsonText;
import tabor.parse.Reader;
import tabor.source.Passage;

/** Formatting: of a file, of some lines, and of the line that a person has just left. */
record FormatRequests(Session session) {
  void declare(Requests requests) {
    requests.inFile(
        Lane.READING,
        "textDocument/formatting",
        DocumentFormattingParams.class,
        p -> p.getTextDocument().getUri(),
        // It was read for its diagnostics, and is not read again.
        (file, params) ->
            written(
                file.document(),
                Formatter.replacements(file.compiled().text(), file.compiled().syntax())));
    requests.inText(
        Lane.READING,
        "textDocument/rangeFormatting",
        DocumentRangeFormattingParams.class,
        p -> p.getTextDocument().getUri(),
        this::range,
        "range.start",
        "range.end");
    requests.inText(
        Lane.TYPING,
        "textDocument/onTypeFormatting",
        DocumentOnTypeFormattingParams.class,
        p -> p.getTextDocument().getUri(),
        this::onType,
        "position");
  }

  private List<TextEdit> range(OpenDocument document, DocumentRangeFormattingParams params) {
    Range range = params.getRange();
    int first = Math.max(0, range.getStart().getLine());
    int last = Math.max(first, range.getEnd().getLine());
    // A selection of whole lines ends at the start of the line after them.
    if (last > first && range.getEnd().getCharacter() == 0) {
      last--;
    }
    return lines(document, first, last);
  }

  private List<TextEdit> onType(OpenDocument document, DocumentOnTypeFormattingParams params) {
    int line = params.getPosition().getLine() - 1;
    if (line < 0 || line + 1 >= document.lines().lineCount()) {
      return List.of();
    }
    List<TextEdit> made = lines(document, line, line);
    // The line that the cursor is on stays as it is.
    made.removeIf(
        edit ->
            edit.getRange().getEnd().getLine() > line + 1
                || edit.getRange().getStart().getLine() > line);
    return made;
  }

  /**
   * Edits of some lines. No line depends on more than its own section, and whether text follows: so
   * only the sections of these lines and the one after them are read.
   */
  private List<TextEdit> lines(OpenDocument document, int first, int last) {
    TextLines lines = document.lines();
    if (first >= lines.lineCount()) {
      return new ArrayList<>();
    }
    int from = lines.lineStart(first);
    int to = lines.lineEnd(Math.min(last, lines.lineCount() - 1));
    int at = 0;
    int start = -1;
    int firstLine = first;
    StringBuilder text = new StringBuilder();
    for (Passage passage : Reader.passages(document.text())) {
      int end = at + passage.text().length();
      if (start < 0 && end > from) {
        start = at;
        firstLine = first - lines.lineOf(at);
      }
      if (start >= 0) {
        text.append(passage.text());
      }
      if (start >= 0 && at > to) {
        break; // this one only shows that something follows
      }
      at = end;
    }
    if (start < 0) {
      return new ArrayList<>();
    }
    List<Formatter.Replacement> found = new ArrayList<>();
    for (Formatter.Replacement one :
        Formatter.replacements(text.toString(), firstLine, firstLine + last - first)) {
      found.add(new Formatter.Replacement(one.span().shift(start), one.text()));
    }
    return edits(document, found);
  }

  private List<TextEdit> edits(OpenDocument document, List<Formatter.Replacement> replacements) {
    return replacements.stream()
        .map(
            one -> new TextEdit(session.encoding().range(document.lines(), one.span()), one.text()))
        .collect(Collectors.toCollection(ArrayList::new));
  }

  /** The same as it goes out: thousands of edits are written faster than they are made objects. */
  private JsonText written(OpenDocument document, List<Formatter.Replacement> replacements) {
    JsonText json = new JsonText().add("[");
    for (Formatter.Replacement replacement : replacements) {
      Range range = session.encoding().range(document.lines(), replacement.span());
      PositionEncoding.write(json.comma().add("{\"range\":"), range);
      json.add(",\"newText\":").string(replacement.text()).add("}");
    }
    return json.add("]");
  }
}
