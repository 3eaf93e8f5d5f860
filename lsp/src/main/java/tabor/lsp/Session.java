package tabor.lsp;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.lsp4j.DidChangeWatchedFilesRegistrationOptions;
import org.eclipse.lsp4j.FileSystemWatcher;
import org.eclipse.lsp4j.Registration;
import org.eclipse.lsp4j.RegistrationParams;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.jspecify.annotations.Nullable;
import tabor.lsp.startup.InitializeAnswer;

/** What one client and this server agreed on, and what they share. */
final class Session {
  private final Log log;
  private final String version;
  private final Runnable clientGone;
  private final RealPaths paths = new RealPaths();
  private final OpenDocuments documents = new OpenDocuments(paths);
  private final Workspace workspace = new Workspace(documents, paths);
  private final Scheduler scheduler;
  private final CompiledFiles compiled = new CompiledFiles(workspace);
  private final Map<Scheduler.Lane, LaneLibrary> libraries = new EnumMap<>(Scheduler.Lane.class);
  private final Requests requests = new Requests(this);
  private final DiagnosticPublisher diagnostics = new DiagnosticPublisher(this);
  private final TokenRequests tokens = new TokenRequests(this);
  private final CodeActionRequests codeActions = new CodeActionRequests(this);
  private final CommandRequests commands = new CommandRequests(this, codeActions);
  private final Settings settings = new Settings(this);
  private final RunningWork work = new RunningWork();
  private volatile PositionEncoding encoding = PositionEncoding.UTF_16;
  private volatile ClientCapabilities capabilities = new ClientCapabilities(new JsonObject());
  private @Nullable Client client;

  /**
   * A session before {@code initialize}.
   *
   * @param clientGone run when the client's process has died
   */
  Session(Log log, String version, Runnable clientGone) {
    this.log = log;
    this.version = version;
    this.clientGone = clientGone;
    this.scheduler = new Scheduler(log);
    for (Scheduler.Lane lane : Scheduler.Lane.values()) {
      libraries.put(lane, new LaneLibrary(workspace, compiled));
    }
    new DocumentNotifications(this).declare(requests);
    diagnostics.declare(requests);
    new ReadRequests(this).declare(requests);
    new NameRequests(this).declare(requests);
    new OutlineRequests(this).declare(requests);
    new AnnotationRequests(this).declare(requests);
    new CompletionRequests().declare(requests);
    codeActions.declare(requests);
    new FormatRequests(this).declare(requests);
    commands.declare(requests);
    tokens.declare(requests);
    settings.declare(requests);
    work.declare(requests);
  }

  void connect(Client to) {
    client = to;
  }

  Client client() {
    if (client == null) {
      throw new IllegalStateException("not connected");
    }
    return client;
  }

  Log log() {
    return log;
  }

  RealPaths paths() {
    return paths;
  }

  OpenDocuments documents() {
    return documents;
  }

  Workspace workspace() {
    return workspace;
  }

  Scheduler scheduler() {
    return scheduler;
  }

  Requests requests() {
    return requests;
  }

  CompiledFiles compiled() {
    return compiled;
  }

  /** The other files, for requests in this lane. */
  LaneLibrary library(Scheduler.Lane lane) {
    LaneLibrary library = libraries.get(lane);
    if (library == null) {
      throw new IllegalStateException("no lane " + lane);
    }
    return library;
  }

  TokenRequests tokens() {
    return tokens;
  }

  DiagnosticPublisher diagnostics() {
    return diagnostics;
  }

  Settings settings() {
    return settings;
  }

  RunningWork work() {
    return work;
  }

  PositionEncoding encoding() {
    return encoding;
  }

  ClientCapabilities capabilities() {
    return capabilities;
  }

  /** Takes in what the client says of itself; the answer to {@code initialize}. */
  JsonObject initialize(JsonObject params) {
    if (params.get("capabilities") instanceof JsonObject told) {
      capabilities = new ClientCapabilities(told);
    }
    encoding = PositionEncoding.choose(capabilities.list("general", "positionEncodings"));
    folders(params);
    settings.initially(params.get("initializationOptions"));
    if (params.get("processId") instanceof JsonPrimitive pid && pid.isNumber()) {
      ParentWatch.watch(pid.getAsLong(), clientGone);
    }
    return InitializeAnswer.of(encoding.word(), version);
  }

  private void folders(JsonObject params) {
    if (params.get("workspaceFolders") instanceof JsonArray folders) {
      for (JsonElement folder : folders) {
        if (folder instanceof JsonObject object) {
          text(object, "uri").flatMap(Uris::path).ifPresent(workspace::add);
        }
      }
      return;
    }
    text(params, "rootUri")
        .flatMap(Uris::path)
        .or(() -> text(params, "rootPath").flatMap(Session::plainPath))
        .ifPresent(workspace::add);
  }

  private static Optional<Path> plainPath(String path) {
    try {
      return Optional.of(Path.of(path));
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }

  private static Optional<String> text(JsonObject object, String key) {
    return object.get(key) instanceof JsonPrimitive primitive && primitive.isString()
        ? Optional.of(primitive.getAsString())
        : Optional.empty();
  }

  /** The client has our answer. */
  void started() {
    List<Registration> wanted = new ArrayList<>();
    if (capabilities.has("workspace", "didChangeWatchedFiles", "dynamicRegistration")) {
      wanted.add(
          new Registration(
              "tabor-files",
              "workspace/didChangeWatchedFiles",
              new DidChangeWatchedFilesRegistrationOptions(
                  List.of(new FileSystemWatcher(Either.forLeft("**/*.tabor"))))));
    }
    if (capabilities.has("workspace", "didChangeConfiguration", "dynamicRegistration")) {
      JsonObject section = new JsonObject();
      section.addProperty("section", Settings.SECTION);
      wanted.add(new Registration("tabor-settings", "workspace/didChangeConfiguration", section));
    }
    if (!wanted.isEmpty()) {
      client().register(new RegistrationParams(wanted));
    }
    settings.ask();
  }

  /** Nothing more will be asked. */
  void stop() {
    log.say("shutdown");
  }

  /**
   * Ends what runs, and leaves nothing behind.
   *
   * @param patience how long one task may go on from here
   * @return true if nothing runs any more
   */
  boolean close(Duration patience) {
    work.cancelAll();
    commands.close();
    boolean ended = scheduler.close(patience);
    work.writeNoMore(patience);
    return ended;
  }
}
