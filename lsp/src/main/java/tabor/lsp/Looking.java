package tabor.lsp;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.CodeLens;
import org.eclipse.lsp4j.CodeLensParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.DocumentHighlight;
import org.eclipse.lsp4j.DocumentHighlightKind;
import org.eclipse.lsp4j.DocumentHighlightParams;
import org.eclipse.lsp4j.DocumentLink;
import org.eclipse.lsp4j.DocumentLinkParams;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.MarkupContent;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.SelectionRange;
import org.eclipse.lsp4j.SelectionRangeParams;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.SymbolKind;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.WorkspaceSymbolParams;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.ide.Catalog;
import tabor.ide.Leaf;
import tabor.ide.Leaves;
import tabor.ide.Names;
import tabor.ide.Notes;
import tabor.ide.Outline;
import tabor.ide.Slices;
import tabor.source.Span;
import tabor.syntax.Line;

/** Requests that only look: what stands where. */
final class Looking {
  private final Session session;

  Looking(Session session) {
    this.session = session;
  }

  void declare(Routes routes) {
    routes.about(
        "textDocument/hover", HoverParams.class, p -> p.getTextDocument().getUri(), this::hover);
    routes.about(
        "textDocument/definition",
        DefinitionParams.class,
        p -> p.getTextDocument().getUri(),
        this::definition);
    routes.about(
        "textDocument/references",
        ReferenceParams.class,
        p -> p.getTextDocument().getUri(),
        this::references);
    routes.about(
        "textDocument/documentHighlight",
        DocumentHighlightParams.class,
        p -> p.getTextDocument().getUri(),
        this::highlight);
    routes.about(
        "textDocument/documentSymbol",
        DocumentSymbolParams.class,
        p -> p.getTextDocument().getUri(),
        this::symbols);
    routes.about(
        "textDocument/foldingRange",
        FoldingRangeRequestParams.class,
        p -> p.getTextDocument().getUri(),
        this::folds);
    routes.about(
        "textDocument/selectionRange",
        SelectionRangeParams.class,
        p -> p.getTextDocument().getUri(),
        this::selection);
    routes.about(
        "textDocument/inlayHint",
        InlayHintParams.class,
        p -> p.getTextDocument().getUri(),
        this::hints);
    routes.about(
        "textDocument/codeLens",
        CodeLensParams.class,
        p -> p.getTextDocument().getUri(),
        this::lenses);
    routes.about(
        "textDocument/documentLink",
        DocumentLinkParams.class,
        p -> p.getTextDocument().getUri(),
        this::links);
    routes.queued("workspace/symbol", WorkspaceSymbolParams.class, this::workspaceSymbols);
  }

  private Compiled compiled(Document document) {
    return session.analyses().of(document);
  }

  private int offset(Document document, Position position) {
    return session.encoding().offset(document.lines(), position);
  }

  private Range range(Document document, Span span) {
    return session.encoding().range(document.lines(), span);
  }

  private @Nullable Hover hover(Document document, HoverParams params, Worker.Wanted wanted) {
    int offset = offset(document, params.getPosition());
    return tabor.ide.Hover.at(compiled(document), offset, session.analyses())
        .map(
            note ->
                new Hover(
                    new MarkupContent("markdown", note.markdown()), range(document, note.span())))
        .orElse(null);
  }

  private List<Location> definition(
      Document document, DefinitionParams params, Worker.Wanted wanted) {
    Compiled compiled = compiled(document);
    int offset = offset(document, params.getPosition());
    ToLsp to = new ToLsp(session, compiled, document);
    Optional<Location> file =
        tabor.ide.Links.at(compiled, offset)
            .map(
                path ->
                    new Location(to.uri(path), new Range(new Position(0, 0), new Position(0, 0))));
    return file
        .or(() -> Names.definition(compiled, offset, session.analyses()).map(to::location))
        .stream()
        .toList();
  }

  private List<Location> references(
      Document document, ReferenceParams params, Worker.Wanted wanted) {
    Compiled compiled = compiled(document);
    boolean given = params.getContext() == null || params.getContext().isIncludeDeclaration();
    ToLsp to = new ToLsp(session, compiled, document);
    return Names.references(compiled, offset(document, params.getPosition()), session.analyses())
        .stream()
        .filter(place -> given || !place.given())
        .map(to::location)
        .toList();
  }

  private List<DocumentHighlight> highlight(
      Document document, DocumentHighlightParams params, Worker.Wanted wanted) {
    Compiled compiled = compiled(document);
    int offset = offset(document, params.getPosition());
    List<DocumentHighlight> found = new ArrayList<>();
    for (Span span : Slices.at(compiled, offset)) {
      found.add(new DocumentHighlight(range(document, span), DocumentHighlightKind.Text));
    }
    if (found.isEmpty()) {
      for (Names.Place place : Names.references(compiled, offset, session.analyses())) {
        if (place.compiled() == compiled) {
          DocumentHighlightKind kind =
              place.given() ? DocumentHighlightKind.Write : DocumentHighlightKind.Read;
          found.add(new DocumentHighlight(range(document, place.span()), kind));
        }
      }
    }
    return found;
  }

  private List<Either<SymbolInformation, DocumentSymbol>> symbols(
      Document document, DocumentSymbolParams params, Worker.Wanted wanted) {
    return Outline.symbols(compiled(document)).stream()
        .map(symbol -> Either.<SymbolInformation, DocumentSymbol>forRight(symbol(document, symbol)))
        .toList();
  }

  private DocumentSymbol symbol(Document document, Outline.Symbol symbol) {
    DocumentSymbol made =
        new DocumentSymbol(
            symbol.name(),
            kind(symbol.sort()),
            range(document, symbol.whole()),
            range(document, symbol.nameSpan()));
    made.setDetail(symbol.detail());
    made.setChildren(symbol.parts().stream().map(part -> symbol(document, part)).toList());
    return made;
  }

  private static SymbolKind kind(Outline.Sort sort) {
    return switch (sort) {
      case GROOVE -> SymbolKind.Class;
      case STEP -> SymbolKind.Method;
      case CHART -> SymbolKind.Event;
      case PATTERN -> SymbolKind.Function;
      case KIT -> SymbolKind.Struct;
      case PART -> SymbolKind.Field;
    };
  }

  private List<WorkspaceSymbol> workspaceSymbols(
      WorkspaceSymbolParams params, Worker.Wanted wanted) {
    String query = params.getQuery() == null ? "" : params.getQuery();
    List<WorkspaceSymbol> found = new ArrayList<>();
    for (java.nio.file.Path path : session.workspace().files()) {
      wanted.check();
      session
          .analyses()
          .file(path)
          .ifPresent(
              compiled -> {
                ToLsp to = new ToLsp(session, compiled, path);
                for (Outline.Symbol symbol : Outline.symbols(compiled)) {
                  if (symbol.name().contains(query) || symbol.detail().contains(query)) {
                    found.add(
                        new WorkspaceSymbol(
                            symbol.name(),
                            kind(symbol.sort()),
                            Either.forLeft(
                                to.location(new Names.Place(compiled, symbol.nameSpan(), true)))));
                  }
                }
              });
    }
    return found;
  }

  private List<FoldingRange> folds(
      Document document, FoldingRangeRequestParams params, Worker.Wanted wanted) {
    return Outline.folds(compiled(document)).stream()
        .map(
            span ->
                new FoldingRange(
                    document.lines().lineOf(span.start()), document.lines().lineOf(span.end())))
        .filter(fold -> fold.getEndLine() > fold.getStartLine())
        .toList();
  }

  private List<SelectionRange> selection(
      Document document, SelectionRangeParams params, Worker.Wanted wanted) {
    List<SelectionRange> found = new ArrayList<>();
    for (Position position : params.getPositions()) {
      List<Span> spans = Outline.selection(compiled(document), offset(document, position));
      SelectionRange outer = null;
      for (int i = spans.size() - 1; i >= 0; i--) {
        outer = new SelectionRange(range(document, spans.get(i)), outer);
      }
      found.add(outer);
    }
    return found;
  }

  private List<InlayHint> hints(Document document, InlayHintParams params, Worker.Wanted wanted) {
    Span range = session.encoding().span(document.lines(), params.getRange());
    List<InlayHint> found = new ArrayList<>();
    for (Notes.Hint hint : Notes.hints(compiled(document), range, session.analyses())) {
      Position at = session.encoding().position(document.lines(), hint.offset());
      InlayHint made = new InlayHint(at, Either.forLeft(hint.text()));
      made.setPaddingRight(hint.before());
      made.setPaddingLeft(!hint.before());
      found.add(made);
    }
    return found;
  }

  private List<CodeLens> lenses(Document document, CodeLensParams params, Worker.Wanted wanted) {
    List<CodeLens> found = new ArrayList<>();
    for (Notes.Lens lens : Notes.lenses(compiled(document))) {
      Range range = range(document, lens.heading());
      List<Object> arguments = List.of(document.uri(), lens.section());
      found.add(new CodeLens(range, new Command("play", "tabor.play", arguments), null));
      found.add(
          new CodeLens(range, new Command("build", "tabor.build", List.of(document.uri())), null));
      if (lens.strokes() >= 0) {
        String changed =
            lens.strokes() == 1 ? "1 stroke changed" : lens.strokes() + " strokes changed";
        found.add(new CodeLens(range, new Command(changed, "tabor.changes", arguments), null));
      }
    }
    return found;
  }

  private List<DocumentLink> links(
      Document document, DocumentLinkParams params, Worker.Wanted wanted) {
    Compiled compiled = compiled(document);
    ToLsp to = new ToLsp(session, compiled, document);
    List<DocumentLink> found = new ArrayList<>();
    for (Line line : compiled.syntax().get(0).lines()) {
      for (Leaf leaf : Leaves.of(line)) {
        if (leaf.role() == Leaf.Role.FILE) {
          Catalog.used(compiled.file(), leaf.text())
              .ifPresent(
                  path ->
                      found.add(
                          new DocumentLink(
                              range(document, compiled.span(line.spot(leaf.span()))),
                              to.uri(path))));
        }
      }
    }
    return found;
  }
}
