package tabor.lsp;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import org.eclipse.lsp4j.ApplyWorkspaceEditParams;
import org.eclipse.lsp4j.ConfigurationItem;
import org.eclipse.lsp4j.ConfigurationParams;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.MessageType;
import org.eclipse.lsp4j.ProgressParams;
import org.eclipse.lsp4j.RegistrationParams;
import org.eclipse.lsp4j.ShowDocumentParams;
import org.eclipse.lsp4j.WorkDoneProgressCreateParams;
import org.eclipse.lsp4j.WorkDoneProgressNotification;
import org.eclipse.lsp4j.jsonrpc.Endpoint;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.jspecify.annotations.Nullable;

/** What the server says to the client of its own accord. Answers come as JSON, or are left. */
final class Client {
  private final Endpoint remote;

  Client(Endpoint remote) {
    this.remote = remote;
  }

  /** Sends the diagnostics of a file. */
  void publish(Object params) {
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

  /** Asks the client to change texts. */
  void apply(ApplyWorkspaceEditParams params) {
    CompletableFuture<?> unused = remote.request("workspace/applyEdit", params);
  }

  /** Asks for the settings of a name; nothing comes of it if the client does not say. */
  void configuration(String section, Consumer<@Nullable Object> sink) {
    ConfigurationItem item = new ConfigurationItem();
    item.setSection(section);
    CompletableFuture<?> unused =
        remote
            .request("workspace/configuration", new ConfigurationParams(List.of(item)))
            .thenAccept(sink);
  }

  /** Asks for a token's progress to be shown. */
  CompletableFuture<?> createProgress(String token) {
    return remote.request(
        "window/workDoneProgress/create", new WorkDoneProgressCreateParams(Either.forLeft(token)));
  }

  void progress(Either<String, Integer> token, WorkDoneProgressNotification value) {
    remote.notify("$/progress", new ProgressParams(token, Either.forLeft(value)));
  }
}
