package tabor.lsp;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PrepareRenameParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.WorkspaceSymbolParams;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.ide.Library;
import tabor.ide.Outline;
import tabor.ide.References;
import tabor.ide.Rename;
import tabor.ide.UseLinks;
import tabor.lsp.Scheduler.Lane;

/** Names across files: where they are given and used, and how they are changed. */
record NameRequests(Session session) {
  void declare(Requests requests) {
    requests.atPlace(
        Lane.READING, "textDocument/definition", DefinitionParams.class, NameRequests::definition);
    requests.atPlace(
        Lane.READING, "textDocument/references", ReferenceParams.class, NameRequests::references);
    requests.atPlace(
        Lane.READING,
        "textDocument/prepareRename",
        PrepareRenameParams.class,
        NameRequests::prepareRename);
    requests.atPlace(
        Lane.READING, "textDocument/rename", RenameParams.class, NameRequests::rename, "newName");
    requests.inWorkspace(
        Lane.READING,
        "workspace/symbol",
        WorkspaceSymbolParams.class,
        this::workspaceSymbols,
        "query");
  }

  private static List<Location> definition(FileContext file, DefinitionParams params) {
    int offset = file.offset(params.getPosition());
    LspConverter to = file.converter();
    Optional<Location> used =
        UseLinks.at(file.compiled(), offset)
            .map(
                path ->
                    new Location(to.uri(path), new Range(new Position(0, 0), new Position(0, 0))));
    return used
        .or(() -> References.definition(file.compiled(), offset, file.library()).map(to::location))
        .stream()
        .toList();
  }

  private static List<Location> references(FileContext file, ReferenceParams params) {
    boolean given = params.getContext() == null || params.getContext().isIncludeDeclaration();
    LspConverter to = file.converter();
    int offset = file.offset(params.getPosition());
    return References.references(file.compiled(), offset, file.library()).stream()
        .filter(place -> given || !place.given())
        .map(to::location)
        .toList();
  }

  private static @Nullable Range prepareRename(FileContext file, PrepareRenameParams params) {
    int offset = file.offset(params.getPosition());
    return Rename.span(file.compiled(), offset, file.library()).map(file::range).orElse(null);
  }

  private static WorkspaceEdit rename(FileContext file, RenameParams params) {
    String name = params.getNewName();
    try {
      int offset = file.offset(params.getPosition());
      List<References.Place> places = Rename.places(file.compiled(), offset, name, file.library());
      if (name.length() > 1 && !canBeName(name, file.library())) {
        throw Requests.refused(name + " is a word of the language; choose another name");
      }
      LspConverter to = file.converter();
      return to.edit(places.stream().map(place -> to.replacement(place, name)).toList());
    } catch (Rename.BadName e) {
      throw Requests.refused(String.valueOf(e.getMessage()));
    }
  }

  /** Asks the compiler: a word that cannot be given or played has another meaning. */
  private static boolean canBeName(String name, Library library) {
    String lesson =
        "groove %1$s\n  hands : r r r r\nstep other \"O\" from %1$s\nchart c\n  play %1$s\n";
    return !library
        .trial(Path.of("/no-file/name.tabor").toAbsolutePath(), lesson.formatted(name))
        .hasErrors();
  }

  private List<WorkspaceSymbol> workspaceSymbols(
      WorkspaceSymbolParams params, LaneLibrary library, Scheduler.Wanted wanted) {
    String query = params.getQuery().toLowerCase(Locale.ROOT);
    List<WorkspaceSymbol> found = new ArrayList<>();
    for (Path path : session.workspace().files()) {
      wanted.check();
      library.file(path).ifPresent(compiled -> symbols(compiled, path, query, found));
    }
    return found;
  }

  private void symbols(Compiled compiled, Path path, String query, List<WorkspaceSymbol> found) {
    LspConverter to = new LspConverter(session, compiled, path);
    for (Outline.Symbol symbol : Outline.symbols(compiled)) {
      String words = (symbol.name() + "\n" + symbol.detail()).toLowerCase(Locale.ROOT);
      if (words.contains(query)) {
        Location location = to.location(new References.Place(compiled, symbol.nameSpan(), true));
        found.add(
            new WorkspaceSymbol(
                symbol.name(), OutlineRequests.kind(symbol.sort()), Either.forLeft(location)));
      }
    }
  }
}
