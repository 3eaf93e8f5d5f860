package tabor.lsp;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.SelectionRange;
import org.eclipse.lsp4j.SelectionRangeParams;
import org.eclipse.lsp4j.SymbolKind;
import tabor.ide.Outline;
import tabor.lsp.Scheduler.Lane;
import tabor.lsp.transport.JsonText;
import tabor.source.Span;

/** The shape of a file: its sections, what folds, how a selection grows. */
record OutlineRequests(Session session) {
  void declare(Requests requests) {
    requests.inFile(
        Lane.READING,
        "textDocument/documentSymbol",
        DocumentSymbolParams.class,
        p -> p.getTextDocument().getUri(),
        (file, params) -> symbols(file));
    requests.inFile(
        Lane.READING,
        "textDocument/foldingRange",
        FoldingRangeRequestParams.class,
        p -> p.getTextDocument().getUri(),
        (file, params) -> folds(file));
    requests.inFile(
        Lane.READING,
        "textDocument/selectionRange",
        SelectionRangeParams.class,
        p -> p.getTextDocument().getUri(),
        OutlineRequests::selection,
        "positions");
  }

  /** A tree, or a flat list for a client that knows no other. */
  private JsonText symbols(FileContext file) {
    boolean tree =
        session
            .capabilities()
            .has("textDocument", "documentSymbol", "hierarchicalDocumentSymbolSupport");
    JsonText json = new JsonText().add("[");
    for (Outline.Symbol symbol : Outline.symbols(file.compiled())) {
      if (tree) {
        nested(json, file, symbol);
      } else {
        flat(json, file, symbol, "");
        symbol.parts().forEach(part -> flat(json, file, part, symbol.name()));
      }
    }
    return json.add("]");
  }

  private static void nested(JsonText json, FileContext file, Outline.Symbol symbol) {
    json.comma().add("{\"name\":").string(symbol.name());
    if (!symbol.detail().isEmpty()) {
      json.add(",\"detail\":").string(symbol.detail());
    }
    json.add(",\"kind\":").add(kind(symbol.sort()).getValue());
    PositionEncoding.write(json.add(",\"range\":"), file.range(symbol.whole()));
    PositionEncoding.write(json.add(",\"selectionRange\":"), file.range(symbol.nameSpan()));
    if (!symbol.parts().isEmpty()) {
      json.add(",\"children\":[");
      symbol.parts().forEach(part -> nested(json, file, part));
      json.add("]");
    }
    json.add("}");
  }

  private static void flat(
      JsonText json, FileContext file, Outline.Symbol symbol, String container) {
    json.comma().add("{\"name\":").string(symbol.name());
    json.add(",\"kind\":").add(kind(symbol.sort()).getValue());
    json.add(",\"location\":{\"uri\":").string(file.document().uri());
    PositionEncoding.write(json.add(",\"range\":"), file.range(symbol.whole())).add("}");
    if (!container.isEmpty()) {
      json.add(",\"containerName\":").string(container);
    }
    json.add("}");
  }

  static SymbolKind kind(Outline.Sort sort) {
    return switch (sort) {
      case GROOVE -> SymbolKind.Class;
      case STEP -> SymbolKind.Method;
      case SHEET -> SymbolKind.Enum;
      case CHART -> SymbolKind.Event;
      case PATTERN -> SymbolKind.Function;
      case KIT -> SymbolKind.Struct;
      case PLAYER -> SymbolKind.Object;
      case PART -> SymbolKind.Field;
    };
  }

  private static List<FoldingRange> folds(FileContext file) {
    TextLines lines = file.document().lines();
    return Outline.folds(file.compiled()).stream()
        .map(span -> new FoldingRange(lines.lineOf(span.start()), lines.lineOf(span.end())))
        .filter(fold -> fold.getEndLine() > fold.getStartLine())
        .toList();
  }

  private static List<SelectionRange> selection(FileContext file, SelectionRangeParams params) {
    List<SelectionRange> found = new ArrayList<>();
    for (Position position : params.getPositions()) {
      List<Span> spans = Outline.selection(file.compiled(), file.offset(position));
      SelectionRange outer = null;
      for (int i = spans.size() - 1; i >= 0; i--) {
        outer = new SelectionRange(file.range(spans.get(i)), outer);
      }
      found.add(outer);
    }
    return found;
  }
}
