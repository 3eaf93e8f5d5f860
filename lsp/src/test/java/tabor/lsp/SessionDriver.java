package tabor.lsp;

import com.google.gson.JsonParser;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.jsonrpc.Endpoint;

/** Tells a session what an editor tells it, without a connection between them. */
final class SessionDriver {
  private SessionDriver() {}

  /** A client that answers everything with nothing, and hears nothing. */
  private static final class Silent implements Endpoint {
    @Override
    public CompletableFuture<?> request(String method, Object parameter) {
      return CompletableFuture.completedFuture(null);
    }

    @Override
    public void notify(String method, Object parameter) {}
  }

  /** Connects a silent client with these capabilities, an object of JSON. */
  static void connect(Session session, String capabilities) {
    session.connect(new Client(new Silent()));
    session.initialize(
        JsonParser.parseString("{\"capabilities\":" + capabilities + "}").getAsJsonObject());
  }

  /** Opens a file as its first version. */
  static void open(Session session, String uri, String text) {
    session
        .requests()
        .notify(
            "textDocument/didOpen",
            new DidOpenTextDocumentParams(new TextDocumentItem(uri, "tabor", 1, text)));
  }

  /** Makes this the second version of an open file. */
  static void change(Session session, String uri, String text) {
    session
        .requests()
        .notify(
            "textDocument/didChange",
            new DidChangeTextDocumentParams(
                new VersionedTextDocumentIdentifier(uri, 2),
                List.of(new TextDocumentContentChangeEvent(text))));
  }

  /** Closes a file. */
  static void close(Session session, String uri) {
    session
        .requests()
        .notify(
            "textDocument/didClose",
            new DidCloseTextDocumentParams(new TextDocumentIdentifier(uri)));
  }
}
