package tabor.lsp;

import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.MessageType;
import org.eclipse.lsp4j.ProgressParams;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.RegistrationParams;
import org.eclipse.lsp4j.ShowDocumentParams;
import org.eclipse.lsp4j.WorkDoneProgressCreateParams;
import org.eclipse.lsp4j.WorkDoneProgressNotification;
import org.eclipse.lsp4j.jsonrpc.Endpoint;
import org.eclipse.lsp4j.jsonrpc.messages.Either;

/** What the server says to the client of its own accord. */
final class Client {
  private final Endpoint remote;

  Client(Endpoint remote) {
    this.remote = remote;
  }

  /** Tells the routes how the client's answers are read. */
  static void declare(Routes routes) {
    routes.outgoing("client/registerCapability", Object.class);
    routes.outgoing("window/workDoneProgress/create", Object.class);
    routes.outgoing("window/showDocument", Object.class);
    routes.outgoing("workspace/diagnostic/refresh", Object.class);
    routes.outgoing("workspace/codeLens/refresh", Object.class);
    routes.outgoing("workspace/inlayHint/refresh", Object.class);
    routes.outgoing("workspace/semanticTokens/refresh", Object.class);
  }

  void publish(PublishDiagnosticsParams params) {
    remote.notify("textDocument/publishDiagnostics", params);
  }

  /** Shows a message to the person. */
  void show(MessageType type, String message) {
    remote.notify("window/showMessage", new MessageParams(type, message));
  }

  void register(RegistrationParams params) {
    CompletableFuture<?> unused = remote.request("client/registerCapability", params);
  }

  /** Asks the client to ask again: {@code diagnostic}, {@code codeLens}, {@code inlayHint} … */
  void refresh(String what) {
    CompletableFuture<?> unused = remote.request("workspace/" + what + "/refresh", null);
  }

  void showDocument(ShowDocumentParams params) {
    CompletableFuture<?> unused = remote.request("window/showDocument", params);
  }

  void createProgress(String token) {
    CompletableFuture<?> unused =
        remote.request(
            "window/workDoneProgress/create",
            new WorkDoneProgressCreateParams(Either.forLeft(token)));
  }

  void progress(Either<String, Integer> token, WorkDoneProgressNotification value) {
    remote.notify("$/progress", new ProgressParams(token, Either.forLeft(value)));
  }
}
