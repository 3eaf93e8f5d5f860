package tabor.lsp;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonPrimitive;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.function.BiFunction;
import org.eclipse.lsp4j.ApplyWorkspaceEditParams;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.diagnostic.Code;
import tabor.ide.QuickFix;
import tabor.ide.QuickFixes;
import tabor.ide.Refactoring;
import tabor.ide.Refactorings;
import tabor.ide.TextEdit;
import tabor.lsp.Scheduler.Lane;
import tabor.source.Span;

/**
 * Code actions: fixes of diagnostics, and other ways to write the same. A client that asks again
 * for the one that was chosen gets a list of what may help at once, and the chosen one is tried on
 * the text before anything is changed. For a client that does not, all are tried before they are
 * listed. One that knows no actions is given commands, which change the text through it.
 */
record CodeActionRequests(Session session) {
  private static final String FIX_ALL = "source.fixAll.tabor";

  /**
   * How many characters may be compiled for a list: a lesson of five pages with six choices. Up to
   * there what would be refused is not listed; beyond, it is tried when it is chosen.
   */
  private static final long MOST_TRIED = 120_000;

  void declare(Requests requests) {
    requests.futures(
        "textDocument/codeAction",
        CodeActionParams.class,
        this::actions,
        "textDocument.uri",
        "range.start",
        "range.end");
    requests.futures("codeAction/resolve", CodeAction.class, this::resolve, "title");
  }

  private boolean resolves() {
    String[] at = {"textDocument", "codeAction"};
    return literal()
        && session.capabilities().has(at[0], at[1], "dataSupport")
        && session
            .capabilities()
            .list(at[0], at[1], "resolveSupport", "properties")
            .contains("edit");
  }

  private boolean literal() {
    return session.capabilities().has("textDocument", "codeAction", "codeActionLiteralSupport");
  }

  private CompletableFuture<?> actions(CodeActionParams params) {
    OpenDocument document = session.requests().document(params.getTextDocument().getUri());
    // Without the other request everything is tried first, which may take long.
    Lane lane = resolves() ? Lane.READING : Lane.FIXING;
    return session.requests().inFile(lane, document, file -> actions(file, params));
  }

  private List<Either<Command, CodeAction>> actions(FileContext file, CodeActionParams params) {
    List<String> only = params.getContext() == null ? null : params.getContext().getOnly();
    Span range = file.span(params.getRange());
    List<ActionChoice> choices = new ArrayList<>();
    if (wants(only, CodeActionKind.QuickFix)) {
      fixes(file, range, choices);
    }
    if (wants(only, CodeActionKind.RefactorRewrite)) {
      file.wanted().check();
      for (Refactoring one : Refactorings.at(file.compiled(), range.start(), file.library())) {
        choices.add(
            new ActionChoice(CodeActionKind.RefactorRewrite, range.start(), "", one.title()));
      }
    }
    // Everything in the file at once: only for those who ask for it, as on saving.
    boolean all = only != null && wants(only, FIX_ALL);
    if (all) {
      QuickFixes.all(file.compiled())
          .ifPresent(fix -> choices.add(new ActionChoice(FIX_ALL, -1, "", fix.title())));
    }
    List<Either<Command, CodeAction>> found = new ArrayList<>();
    boolean cheap = (long) choices.size() * file.compiled().text().length() <= MOST_TRIED;
    Collection<ActionChoice> listed = new LinkedHashSet<>(choices);
    if (!cheap && resolves()) {
      listed = ActionTrials.some(file, listed);
    }
    for (ActionChoice choice : listed) {
      // What is asked for by its kind alone is applied unseen, and never resolved by some clients.
      boolean later = resolves() && !choice.kind().equals(FIX_ALL);
      if (later) {
        file.wanted().check();
        if (!cheap || ActionTrials.worked(file, choice).isPresent()) {
          found.add(Either.forRight(action(file, params, choice, null)));
        }
      } else {
        ActionTrials.worked(file, choice)
            .map(
                edits ->
                    literal()
                        ? Either.<Command, CodeAction>forRight(
                            action(file, params, choice, edit(file, edits)))
                        : Either.<Command, CodeAction>forLeft(command(file, choice)))
            .ifPresent(found::add);
      }
    }
    return found;
  }

  private static void fixes(FileContext file, Span range, List<ActionChoice> choices) {
    Compiled compiled = file.compiled();
    Set<Code> fixable = new LinkedHashSet<>();
    // What is one change, or has one name at one place, is one choice.
    Map<Object, ActionChoice> each = new LinkedHashMap<>();
    Map<List<TextEdit>, Object> changes = new HashMap<>();
    for (tabor.diagnostic.Diagnostic diagnostic : compiled.diagnostics()) {
      Span span = compiled.span(diagnostic.spot());
      if (span.end() < range.start() || span.start() > range.end()) {
        continue;
      }
      file.wanted().check();
      String code = diagnostic.code().word();
      ActionChoice.Told told =
          new ActionChoice.Told(code, span.start(), DiagnosticWriter.head(diagnostic));
      boolean first = true;
      for (QuickFix fix : QuickFixes.of(compiled, diagnostic)) {
        ActionChoice made =
            new ActionChoice(CodeActionKind.QuickFix, span.start(), code, fix.title());
        Object name = changes.computeIfAbsent(fix.edits(), unknown -> made);
        each.put(name, each.getOrDefault(name, made).and(told, first));
        first = false;
        fixable.add(diagnostic.code());
      }
    }
    choices.addAll(each.values());
    for (Code code : fixable) {
      QuickFixes.all(compiled, code)
          .ifPresent(
              fix ->
                  choices.add(
                      new ActionChoice(CodeActionKind.QuickFix, -1, code.word(), fix.title())));
    }
  }

  /** A kind is asked for by its own name or by one that it lies under; no list asks for all. */
  private static boolean wants(@Nullable List<String> only, String kind) {
    return only == null
        || only.isEmpty()
        || only.stream().anyMatch(asked -> kind.equals(asked) || kind.startsWith(asked + "."));
  }

  private static WorkspaceEdit edit(FileContext file, List<TextEdit> edits) {
    LspConverter to = file.converter();
    return to.edit(edits.stream().map(edit -> to.replacement(edit.span(), edit.text())).toList());
  }

  private static CodeAction action(
      FileContext file,
      CodeActionParams params,
      ActionChoice choice,
      @Nullable WorkspaceEdit edit) {
    CodeAction made = new CodeAction(choice.title());
    made.setKind(choice.kind());
    if (choice.preferred()) {
      made.setIsPreferred(true);
    }
    if (edit == null) {
      made.setData(data(file, choice));
    } else {
      made.setEdit(edit);
    }
    if (params.getContext() != null && params.getContext().getDiagnostics() != null) {
      List<Diagnostic> fixed =
          params.getContext().getDiagnostics().stream()
              .filter(theirs -> choice.fixed().stream().anyMatch(told -> told.is(file, theirs)))
              .toList();
      if (!fixed.isEmpty()) {
        made.setDiagnostics(fixed);
      }
    }
    return made;
  }

  private static List<Object> data(FileContext file, ActionChoice choice) {
    OpenDocument document = file.document();
    return List.of(
        document.uri(),
        document.version(),
        choice.kind(),
        choice.place(),
        choice.about(),
        choice.title());
  }

  private static Command command(FileContext file, ActionChoice choice) {
    return new Command(choice.title(), "tabor.apply", data(file, choice));
  }

  /** The action of a listed choice, tried, with its edit. */
  private CompletableFuture<?> resolve(CodeAction listed) {
    if (!(listed.getData() instanceof JsonArray data)) {
      return CompletableFuture.completedFuture(listed); // it came whole
    }
    return chosen(
        data.asList(),
        (file, edits) -> {
          listed.setEdit(edit(file, edits));
          return listed;
        });
  }

  /** Applies a choice through the client: {@code tabor.apply}. */
  CompletableFuture<?> apply(List<?> data) {
    return chosen(
        data,
        (file, edits) -> {
          ApplyWorkspaceEditParams params = new ApplyWorkspaceEditParams(edit(file, edits));
          params.setLabel(text(data.get(5)));
          session.client().apply(params);
          return text(data.get(5));
        });
  }

  private CompletableFuture<?> chosen(
      List<?> data, BiFunction<FileContext, List<TextEdit>, Object> use) {
    if (data.size() != 6 || !(data.get(1) instanceof JsonPrimitive version)) {
      throw Requests.invalid("not one of our actions");
    }
    OpenDocument document = session.requests().document(text(data.get(0)));
    if (document.version() != version.getAsInt()) {
      throw Requests.error(
          ResponseErrorCode.ContentModified, "the text was changed since this was offered");
    }
    ActionChoice choice =
        new ActionChoice(
            text(data.get(2)),
            data.get(3) instanceof JsonElement place ? place.getAsInt() : -1,
            text(data.get(4)),
            text(data.get(5)));
    return session
        .requests()
        .inFile(
            Lane.FIXING,
            document,
            file -> {
              ActionTrials.Tried tried = ActionTrials.tried(file, choice);
              if (tried.edits() == null) {
                throw Requests.refused(refusal(choice, tried.why()));
              }
              return use.apply(file, tried.edits());
            });
  }

  private static String refusal(ActionChoice choice, @Nullable String why) {
    String what = "Nothing was changed: “" + choice.title() + "” ";
    return what + (why == null ? "does not fit this text any more" : "would " + why);
  }

  private static String text(@Nullable Object value) {
    return value instanceof JsonPrimitive primitive ? primitive.getAsString() : "";
  }
}
