package tabor.lsp;

import java.nio.file.Path;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.jsonrpc.json.MessageJsonHandler;
import org.eclipse.lsp4j.jsonrpc.messages.NotificationMessage;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.resolve.Options;

/**
 * Does after {@code initialized} what a first keystroke would otherwise wait for: classes are
 * loaded, and the code that every keystroke runs is run until the machine has compiled it. In small
 * pieces on the worker, and no more once the client has something to ask.
 */
final class WarmUp {
  private static final int ROUNDS = 60;
  private static final int SECTIONS = 12;

  private static final String SECTION =
      """
      groove warm-%1$d "Warm"
        hihat : rr rr rrrr rr=
        snare : . l {ll}. 'L
        kick  : x . .x .
      step up-%1$d "Up"
        right plays ride
        ghost left at 2
        add kick at 2& 3a
        hands play paradiddle in sixteenths
      """;

  private static final String CHANGE =
      """
      {"jsonrpc":"2.0","method":"textDocument/didChange","params":{
        "textDocument":{"uri":"tabor:warm","version":1},"contentChanges":[{"range":{
          "start":{"line":0,"character":0},"end":{"line":0,"character":1}},"text":"x"}]}}\
      """;

  private final Session session;
  private final MessageJsonHandler json;
  private final Compiler compiler = new Compiler(Loader.NONE);
  private final String text;
  private int round;

  private WarmUp(Session session, MessageJsonHandler json) {
    this.session = session;
    this.json = json;
    StringBuilder built = new StringBuilder("title \"Warm\"\ntime 4/4\n");
    for (int i = 0; i < SECTIONS; i++) {
      built.append(SECTION.formatted(i));
    }
    this.text = built.toString();
  }

  /** Begins. */
  static void start(Session session, MessageJsonHandler json) {
    WarmUp warmUp = new WarmUp(session, json);
    session.worker().submit(warmUp::next);
  }

  private Object next(Worker.Wanted wanted) {
    Document document =
        new Document(
            "tabor:warm",
            Path.of("/no-file", "warm.tabor"),
            false,
            round,
            TextLines.of(text)
                .replace(text.length() / 2, text.length() / 2, "}".repeat(round % 3)));
    Compiled compiled = compiler.compile(document.path(), document.text(), Options.NONE);
    ToLsp to = new ToLsp(session, compiled, document);
    NotificationMessage publish = new NotificationMessage();
    publish.setMethod("textDocument/publishDiagnostics");
    publish.setParams(
        new PublishDiagnosticsParams(
            document.uri(),
            compiled.diagnostics().stream().map(to::diagnostic).toList(),
            document.version()));
    json.parseMessage(CHANGE);
    if (++round < ROUNDS && !session.worker().isBusy()) {
      session.worker().submit(this::next);
    }
    return json.serialize(publish);
  }
}
