package tabor.lsp;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.eclipse.lsp4j.ApplyWorkspaceEditParams;
import org.eclipse.lsp4j.ApplyWorkspaceEditResponse;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.MessageActionItem;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.ProgressParams;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.RegistrationParams;
import org.eclipse.lsp4j.ShowDocumentParams;
import org.eclipse.lsp4j.ShowDocumentResult;
import org.eclipse.lsp4j.ShowMessageRequestParams;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.WorkDoneProgressCreateParams;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.launch.LSPLauncher;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;

/** An editor for tests: LSP4J's own client at one end of two pipes, our server at the other. */
final class Editor implements LanguageClient, AutoCloseable {
  /** What an editor of today can do. */
  static final String MODERN =
      """
      {"textDocument": {
        "publishDiagnostics": {"relatedInformation": true, "versionSupport": true,
          "codeDescriptionSupport": true, "tagSupport": {"valueSet": [1, 2]}},
        "hover": {"contentFormat": ["markdown", "plaintext"]},
        "documentSymbol": {"hierarchicalDocumentSymbolSupport": true},
        "codeAction": {"codeActionLiteralSupport": {"codeActionKind": {"valueSet": []}},
          "dataSupport": true, "resolveSupport": {"properties": ["edit"]}}}}
      """;

  private static final long PATIENCE_SECONDS = 30;

  final LanguageServer server;
  final CompletableFuture<Integer> exitCode;
  final List<MessageParams> shown = new ArrayList<>();
  final BlockingQueue<ApplyWorkspaceEditParams> applied = new LinkedBlockingQueue<>();

  /** How often the server asked to ask for lenses again. */
  final AtomicInteger lensRefreshes = new AtomicInteger();

  final List<ShowDocumentParams> showedDocuments =
      new java.util.concurrent.CopyOnWriteArrayList<>();
  final List<ProgressParams> progress = new java.util.concurrent.CopyOnWriteArrayList<>();
  final Path folder;

  /** What the server wrote into its log. */
  final ByteArrayOutputStream log = new ByteArrayOutputStream();

  InitializeResult initialized = new InitializeResult();

  private final BlockingQueue<PublishDiagnosticsParams> published = new LinkedBlockingQueue<>();
  private final Map<String, String> texts = new HashMap<>();
  private final Map<String, Integer> versions = new HashMap<>();
  private final PipedOutputStream toServer = new PipedOutputStream();

  private Editor(Path folder) throws IOException {
    this.folder = folder;
    PipedInputStream serverIn = new PipedInputStream(toServer, 1 << 16);
    PipedOutputStream fromServer = new PipedOutputStream();
    PipedInputStream clientIn = new PipedInputStream(fromServer, 1 << 16);
    exitCode = new CompletableFuture<>();
    Thread thread =
        new Thread(
            () -> {
              exitCode.complete(Connection.serve(serverIn, fromServer, Log.to(log), "test"));
              try {
                fromServer.close();
              } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
              }
            },
            "server");
    thread.setDaemon(true);
    thread.start();
    var launcher = LSPLauncher.createClientLauncher(this, clientIn, toServer);
    server = launcher.getRemoteProxy();
    var unused = launcher.startListening();
  }

  /** An editor that works in {@code folder} and can do what {@code capabilities} (JSON) says. */
  static Editor in(Path folder, String capabilities) throws Exception {
    return in(folder, capabilities, "{}");
  }

  /** The same, with options (JSON) for {@code initialize}. */
  static Editor in(Path folder, String capabilities, String initializationOptions)
      throws Exception {
    JsonObject options = JsonParser.parseString(initializationOptions).getAsJsonObject();
    Editor editor = new Editor(folder);
    InitializeParams params = new InitializeParams();
    JsonObject json = JsonParser.parseString(capabilities).getAsJsonObject();
    params.setCapabilities(
        new org.eclipse.lsp4j.jsonrpc.json.MessageJsonHandler(Map.of())
            .getGson()
            .fromJson(json, ClientCapabilities.class));
    params.setWorkspaceFolders(
        List.of(new WorkspaceFolder(folder.toUri().toString(), folder.getFileName().toString())));
    params.setInitializationOptions(options);
    editor.initialized = editor.server.initialize(params).get(PATIENCE_SECONDS, TimeUnit.SECONDS);
    editor.server.initialized(new InitializedParams());
    return editor;
  }

  /** An editor in a fresh folder, which pushes are sent to. */
  static Editor start() throws Exception {
    return in(Files.createTempDirectory("tabor-lsp-test"), MODERN);
  }

  /** The URI of a file in the folder. */
  String uri(String name) {
    return folder.resolve(name).toUri().toString();
  }

  TextDocumentIdentifier id(String name) {
    return new TextDocumentIdentifier(uri(name));
  }

  /** Opens a text, and waits for its diagnostics. */
  List<Diagnostic> open(String name, String text) throws InterruptedException {
    openQuietly(name, text);
    return diagnostics(name);
  }

  /** Opens a text. */
  void openQuietly(String name, String text) {
    texts.put(name, text);
    versions.put(name, 1);
    server
        .getTextDocumentService()
        .didOpen(new DidOpenTextDocumentParams(new TextDocumentItem(uri(name), "tabor", 1, text)));
  }

  void close(String name) {
    server.getTextDocumentService().didClose(new DidCloseTextDocumentParams(id(name)));
  }

  /** The text as this side has it. */
  String text(String name) {
    return texts.get(name);
  }

  int version(String name) {
    return versions.get(name);
  }

  /** Replaces part of a text, at both ends. */
  void replace(String name, int start, int end, String with) {
    String text = texts.get(name);
    Range range = new Range(position(text, start), position(text, end));
    send(name, List.of(new TextDocumentContentChangeEvent(range, with)));
    texts.put(name, text.substring(0, start) + with + text.substring(end));
  }

  /** Sends changes without keeping them here. */
  void send(String name, List<TextDocumentContentChangeEvent> changes) {
    int version = versions.merge(name, 1, Integer::sum);
    server
        .getTextDocumentService()
        .didChange(
            new DidChangeTextDocumentParams(
                new VersionedTextDocumentIdentifier(uri(name), version), changes));
  }

  /** Sends a whole text. */
  void replaceAll(String name, String text) {
    send(name, List.of(new TextDocumentContentChangeEvent(text)));
    texts.put(name, text);
  }

  /** The diagnostics of a file's newest version. */
  List<Diagnostic> diagnostics(String name) throws InterruptedException {
    return publishedFor(name, versions.get(name)).getDiagnostics();
  }

  /** The next publish for a file that is of this version; any version if it is null. */
  PublishDiagnosticsParams publishedFor(String name, Integer version) throws InterruptedException {
    int newest = 0;
    while (true) {
      PublishDiagnosticsParams next = published.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
      if (next == null) {
        throw new AssertionError(
            "no diagnostics for " + name + " version " + version + "; log:\n" + log);
      }
      if (!next.getUri().equals(uri(name))) {
        continue;
      }
      if (next.getVersion() != null) {
        if (next.getVersion() < newest) {
          throw new AssertionError("version " + next.getVersion() + " after " + newest);
        }
        newest = next.getVersion();
      }
      if (version == null || version.equals(next.getVersion())) {
        return next;
      }
    }
  }

  /** The next change of texts that the server asks for. */
  ApplyWorkspaceEditParams awaitEdit() throws InterruptedException {
    ApplyWorkspaceEditParams next = applied.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
    if (next == null) {
      throw new AssertionError("no edit; log:\n" + log);
    }
    return next;
  }

  /** The position of an offset, UTF-16. */
  static Position position(String text, int offset) {
    int line = 0;
    int start = 0;
    for (int i = 0; i < offset; i++) {
      char c = text.charAt(i);
      if (c == '\n' || (c == '\r' && (i + 1 == text.length() || text.charAt(i + 1) != '\n'))) {
        line++;
        start = i + 1;
      }
    }
    return new Position(line, offset - start);
  }

  /** The offset of a position, UTF-16. */
  static int offset(String text, Position position) {
    int at = 0;
    for (int line = 0; line < position.getLine(); at++) {
      char c = text.charAt(at);
      if (c == '\n' || (c == '\r' && (at + 1 == text.length() || text.charAt(at + 1) != '\n'))) {
        line++;
      }
    }
    return at + position.getCharacter();
  }

  /** The text that a range covers. */
  static String cut(String text, Range range) {
    return text.substring(offset(text, range.getStart()), offset(text, range.getEnd()));
  }

  /** The text after edits, which must not overlap. */
  static String apply(String text, List<? extends TextEdit> edits) {
    List<TextEdit> ordered = new ArrayList<>(edits);
    ordered.sort(
        (a, b) -> offset(text, b.getRange().getStart()) - offset(text, a.getRange().getStart()));
    String now = text;
    int limit = text.length();
    for (TextEdit edit : ordered) {
      int start = offset(text, edit.getRange().getStart());
      int end = offset(text, edit.getRange().getEnd());
      if (end > limit) {
        throw new AssertionError("edits overlap at " + start);
      }
      now = now.substring(0, start) + edit.getNewText() + now.substring(end);
      limit = start;
    }
    return now;
  }

  /** Waits for an answer. */
  static <T> T get(CompletableFuture<T> future) throws Exception {
    return future.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
  }

  @Override
  public void publishDiagnostics(PublishDiagnosticsParams params) {
    published.add(params);
  }

  @Override
  public void showMessage(MessageParams params) {
    shown.add(params);
  }

  @Override
  public CompletableFuture<ShowDocumentResult> showDocument(ShowDocumentParams params) {
    showedDocuments.add(params);
    return CompletableFuture.completedFuture(new ShowDocumentResult(true));
  }

  @Override
  public CompletableFuture<MessageActionItem> showMessageRequest(ShowMessageRequestParams params) {
    return CompletableFuture.completedFuture(null);
  }

  @Override
  public void logMessage(MessageParams params) {}

  @Override
  public void telemetryEvent(Object object) {}

  @Override
  public CompletableFuture<Void> registerCapability(RegistrationParams params) {
    return CompletableFuture.completedFuture(null);
  }

  @Override
  public CompletableFuture<Void> createProgress(WorkDoneProgressCreateParams params) {
    return CompletableFuture.completedFuture(null);
  }

  @Override
  public void notifyProgress(ProgressParams params) {
    progress.add(params);
  }

  @Override
  public CompletableFuture<ApplyWorkspaceEditResponse> applyEdit(ApplyWorkspaceEditParams params) {
    applied.add(params);
    return CompletableFuture.completedFuture(new ApplyWorkspaceEditResponse(true));
  }

  @Override
  public CompletableFuture<Void> refreshCodeLenses() {
    lensRefreshes.incrementAndGet();
    return CompletableFuture.completedFuture(null);
  }

  @Override
  public CompletableFuture<Void> refreshDiagnostics() {
    return CompletableFuture.completedFuture(null);
  }

  @Override
  public void close() throws Exception {
    get(server.shutdown());
    server.exit();
    exitCode.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
  }
}
