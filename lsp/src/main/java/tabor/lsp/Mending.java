package tabor.lsp;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.ide.Fixes;
import tabor.ide.Mend;
import tabor.ide.Recasts;
import tabor.source.Span;

/** Code actions: fixes of diagnostics, and other ways to write the same. */
final class Mending {
  private static final String FIX_ALL = "source.fixAll.tabor";

  private final Session session;

  Mending(Session session) {
    this.session = session;
  }

  void declare(Routes routes) {
    routes.about(
        "textDocument/codeAction",
        CodeActionParams.class,
        p -> p.getTextDocument().getUri(),
        this::actions);
  }

  private List<Either<Command, CodeAction>> actions(
      Document document, CodeActionParams params, Worker.Wanted wanted) {
    Compiled compiled = session.analyses().of(document);
    Span range = session.encoding().span(document.lines(), params.getRange());
    ToLsp to = new ToLsp(session, compiled, document);
    List<String> only = params.getContext() == null ? null : params.getContext().getOnly();
    List<CodeAction> found = new ArrayList<>();
    if (wants(only, CodeActionKind.QuickFix)) {
      fixes(compiled, range, to, wanted, found);
    }
    if (wants(only, CodeActionKind.RefactorRewrite)) {
      wanted.check();
      for (Mend mend : Recasts.at(compiled, range.start(), session.analyses())) {
        found.add(action(mend, CodeActionKind.RefactorRewrite, to));
      }
    }
    // Everything in the file at once: only for those who ask for it, as on saving.
    if (only != null && wants(only, FIX_ALL)) {
      for (Code code : codes(compiled)) {
        wanted.check();
        Fixes.all(compiled, code, session.analyses())
            .ifPresent(mend -> found.add(action(mend, FIX_ALL, to)));
      }
    }
    return found.stream().map(Either::<Command, CodeAction>forRight).toList();
  }

  private void fixes(
      Compiled compiled, Span range, ToLsp to, Worker.Wanted wanted, List<CodeAction> found) {
    Set<Code> fixable = new LinkedHashSet<>();
    for (Diagnostic diagnostic : compiled.diagnostics()) {
      Span span = compiled.span(diagnostic.spot());
      if (span.end() < range.start() || span.start() > range.end()) {
        continue;
      }
      wanted.check();
      boolean first = true;
      for (Mend mend : Fixes.of(compiled, diagnostic, session.analyses())) {
        CodeAction action = action(mend, CodeActionKind.QuickFix, to);
        action.setDiagnostics(List.of(to.diagnostic(diagnostic)));
        action.setIsPreferred(first);
        first = false;
        found.add(action);
        fixable.add(diagnostic.code());
      }
    }
    for (Code code : fixable) {
      wanted.check();
      long count = compiled.diagnostics().stream().filter(d -> d.code() == code).count();
      if (count > 1) {
        Fixes.all(compiled, code, session.analyses())
            .ifPresent(mend -> found.add(action(mend, CodeActionKind.QuickFix, to)));
      }
    }
  }

  private static Set<Code> codes(Compiled compiled) {
    Set<Code> found = new LinkedHashSet<>();
    compiled.diagnostics().forEach(diagnostic -> found.add(diagnostic.code()));
    return found;
  }

  /** A kind is asked for by its own name or by one that it lies under; no list asks for all. */
  private static boolean wants(@Nullable List<String> only, String kind) {
    return only == null
        || only.isEmpty()
        || only.stream().anyMatch(asked -> kind.equals(asked) || kind.startsWith(asked + "."));
  }

  private static CodeAction action(Mend mend, String kind, ToLsp to) {
    CodeAction made = new CodeAction(mend.title());
    made.setKind(kind);
    WorkspaceEdit edit =
        to.edit(
            mend.changes().stream()
                .map(change -> to.replacement(change.span(), change.text()))
                .toList());
    made.setEdit(edit);
    return made;
  }
}
