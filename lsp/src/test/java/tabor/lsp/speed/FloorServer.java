package tabor.lsp.speed;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.DidChangeConfigurationParams;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DidSaveTextDocumentParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ServerCapabilities;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentSyncKind;
import org.eclipse.lsp4j.launch.LSPLauncher;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageClientAware;
import org.eclipse.lsp4j.services.LanguageServer;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.eclipse.lsp4j.services.WorkspaceService;

/**
 * The floor that the real server is measured against: the same library used as its manual says, and
 * a language in which a line is wrong if it has two closing braces. What it takes, any server on
 * this library takes.
 */
public final class FloorServer
    implements LanguageServer, LanguageClientAware, TextDocumentService, WorkspaceService {
  private final Map<String, String> texts = new ConcurrentHashMap<>();
  private LanguageClient client;

  public static void main(String[] args) throws Exception {
    FloorServer server = new FloorServer();
    var launcher = LSPLauncher.createServerLauncher(server, System.in, System.out);
    server.connect(launcher.getRemoteProxy());
    launcher.startListening().get();
  }

  @Override
  public void connect(LanguageClient to) {
    client = to;
  }

  @Override
  public CompletableFuture<InitializeResult> initialize(InitializeParams params) {
    ServerCapabilities capabilities = new ServerCapabilities();
    capabilities.setTextDocumentSync(TextDocumentSyncKind.Incremental);
    return CompletableFuture.completedFuture(new InitializeResult(capabilities));
  }

  @Override
  public CompletableFuture<Object> shutdown() {
    return CompletableFuture.completedFuture(null);
  }

  @Override
  public void exit() {
    System.exit(0);
  }

  @Override
  public TextDocumentService getTextDocumentService() {
    return this;
  }

  @Override
  public WorkspaceService getWorkspaceService() {
    return this;
  }

  @Override
  public void didOpen(DidOpenTextDocumentParams params) {
    texts.put(params.getTextDocument().getUri(), params.getTextDocument().getText());
    check(params.getTextDocument().getUri(), params.getTextDocument().getVersion());
  }

  @Override
  public void didChange(DidChangeTextDocumentParams params) {
    String uri = params.getTextDocument().getUri();
    for (TextDocumentContentChangeEvent change : params.getContentChanges()) {
      texts.computeIfPresent(uri, (key, text) -> changed(text, change));
    }
    check(uri, params.getTextDocument().getVersion());
  }

  private static String changed(String text, TextDocumentContentChangeEvent change) {
    if (change.getRange() == null) {
      return change.getText();
    }
    int start = offset(text, change.getRange().getStart());
    int end = offset(text, change.getRange().getEnd());
    return text.substring(0, start) + change.getText() + text.substring(end);
  }

  private static int offset(String text, Position position) {
    int at = 0;
    for (int line = 0; line < position.getLine(); line++) {
      at = text.indexOf('\n', at) + 1;
    }
    return at + position.getCharacter();
  }

  private void check(String uri, Integer version) {
    List<Diagnostic> found = new ArrayList<>();
    String text = texts.getOrDefault(uri, "");
    int number = 0;
    for (int start = 0; start <= text.length(); number++) {
      int end = text.indexOf('\n', start);
      end = end < 0 ? text.length() : end;
      int braces = text.substring(start, end).indexOf("}}");
      if (braces >= 0) {
        Range range = new Range(new Position(number, braces), new Position(number, braces + 2));
        found.add(new Diagnostic(range, "two braces", DiagnosticSeverity.Error, "floor"));
      }
      start = end + 1;
    }
    client.publishDiagnostics(new PublishDiagnosticsParams(uri, found, version));
  }

  @Override
  public void didClose(DidCloseTextDocumentParams params) {
    texts.remove(params.getTextDocument().getUri());
  }

  @Override
  public void didSave(DidSaveTextDocumentParams params) {}

  @Override
  public void didChangeConfiguration(DidChangeConfigurationParams params) {}

  @Override
  public void didChangeWatchedFiles(DidChangeWatchedFilesParams params) {}
}
