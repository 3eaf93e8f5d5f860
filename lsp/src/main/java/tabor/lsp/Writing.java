package tabor.lsp;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionItemKind;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.ParameterInformation;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PrepareRenameParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.SignatureHelp;
import org.eclipse.lsp4j.SignatureHelpParams;
import org.eclipse.lsp4j.SignatureInformation;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.jsonrpc.messages.Tuple;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.ide.Completion;
import tabor.ide.Names;
import tabor.ide.Proposal;
import tabor.ide.Signatures;
import tabor.source.Span;

/** Requests made while a person writes: completion, signature help, rename. */
final class Writing {
  private final Session session;

  Writing(Session session) {
    this.session = session;
  }

  void declare(Routes routes) {
    routes.about(
        "textDocument/completion",
        CompletionParams.class,
        p -> p.getTextDocument().getUri(),
        this::complete);
    routes.about(
        "textDocument/signatureHelp",
        SignatureHelpParams.class,
        p -> p.getTextDocument().getUri(),
        this::signature);
    routes.about(
        "textDocument/prepareRename",
        PrepareRenameParams.class,
        p -> p.getTextDocument().getUri(),
        this::prepareRename);
    routes.about(
        "textDocument/rename", RenameParams.class, p -> p.getTextDocument().getUri(), this::rename);
  }

  private Compiled compiled(Document document) {
    return session.analyses().of(document);
  }

  private int offset(Document document, Position position) {
    return session.encoding().offset(document.lines(), position);
  }

  private CompletionList complete(
      Document document, CompletionParams params, Worker.Wanted wanted) {
    int offset = offset(document, params.getPosition());
    List<CompletionItem> items = new ArrayList<>();
    for (Proposal proposal : Completion.at(compiled(document), offset, session.analyses())) {
      CompletionItem item = new CompletionItem(proposal.label());
      item.setKind(kind(proposal.kind()));
      if (!proposal.detail().isEmpty()) {
        item.setDetail(proposal.detail());
      }
      Range range = session.encoding().range(document.lines(), proposal.replace());
      item.setTextEdit(Either.forLeft(new TextEdit(range, proposal.label())));
      item.setSortText(String.format("%04d", items.size()));
      items.add(item);
    }
    return new CompletionList(false, items);
  }

  private static CompletionItemKind kind(Proposal.Kind kind) {
    return switch (kind) {
      case KEYWORD -> CompletionItemKind.Keyword;
      case LIMB -> CompletionItemKind.EnumMember;
      case SURFACE -> CompletionItemKind.Variable;
      case LETTER -> CompletionItemKind.Property;
      case SECTION -> CompletionItemKind.Class;
      case PATTERN -> CompletionItemKind.Function;
      case KIT -> CompletionItemKind.Struct;
      case COUNT -> CompletionItemKind.Event;
      case VALUE -> CompletionItemKind.Value;
      case FILE -> CompletionItemKind.File;
    };
  }

  private @Nullable SignatureHelp signature(
      Document document, SignatureHelpParams params, Worker.Wanted wanted) {
    Signatures.Signature found =
        Signatures.at(compiled(document), offset(document, params.getPosition())).orElse(null);
    if (found == null) {
      return null;
    }
    SignatureInformation shown = new SignatureInformation(found.form());
    shown.setDocumentation(found.meaning());
    List<ParameterInformation> words = new ArrayList<>();
    for (Span span : found.words()) {
      ParameterInformation word = new ParameterInformation();
      word.setLabel(Tuple.two(span.start(), span.end()));
      words.add(word);
    }
    shown.setParameters(words);
    // A number past the last word marks none.
    int active = found.active() < 0 ? words.size() : found.active();
    return new SignatureHelp(List.of(shown), 0, active);
  }

  private @Nullable Range prepareRename(
      Document document, PrepareRenameParams params, Worker.Wanted wanted) {
    return Names.renamable(
            compiled(document), offset(document, params.getPosition()), session.analyses())
        .map(span -> session.encoding().range(document.lines(), span))
        .orElse(null);
  }

  private WorkspaceEdit rename(Document document, RenameParams params, Worker.Wanted wanted) {
    Compiled compiled = compiled(document);
    try {
      List<Names.Place> places =
          Names.rename(
              compiled,
              offset(document, params.getPosition()),
              params.getNewName(),
              session.analyses());
      ToLsp to = new ToLsp(session, compiled, document);
      return to.edit(
          places.stream().map(place -> to.replacement(place, params.getNewName())).toList());
    } catch (Names.BadName e) {
      throw Routes.error(ResponseErrorCode.RequestFailed, e.getMessage());
    }
  }
}
