package tabor.lsp;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.DidChangeWatchedFilesRegistrationOptions;
import org.eclipse.lsp4j.FileSystemWatcher;
import org.eclipse.lsp4j.Registration;
import org.eclipse.lsp4j.RegistrationParams;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.jspecify.annotations.Nullable;

/** What one client and this server agreed on, and what they share. */
final class Session {
  /** How long a client has been silent when it is not waiting for anything. */
  private static final long QUIET_NANOS = 2_000_000;

  private final Log log;
  private final String version;
  private final Runnable clientGone;
  private final Documents documents = new Documents();
  private final Workspace workspace = new Workspace(documents);
  private final Worker worker;
  private final Routes routes;
  private final Analyses analyses = new Analyses(workspace);
  private final Checks checks = new Checks(this);
  private final Colours colours = new Colours(this);
  private final Commands commands = new Commands(this);
  private volatile PositionEncoding encoding = PositionEncoding.UTF_16;
  private volatile ClientCapabilities capabilities = new ClientCapabilities(new JsonObject());
  private @Nullable Client client;
  private volatile long lastHeard = System.nanoTime();

  /**
   * A session before {@code initialize}.
   *
   * @param clientGone run when the client's process has died
   */
  Session(Log log, String version, Runnable clientGone) {
    this.log = log;
    this.version = version;
    this.clientGone = clientGone;
    this.worker = new Worker(log);
    this.routes = new Routes(documents, worker);
    Client.declare(routes);
    new Sync(this).declare(routes);
    checks.declare(routes);
    new Looking(this).declare(routes);
    new Writing(this).declare(routes);
    new Mending(this).declare(routes);
    new Formatting(this).declare(routes);
    commands.declare(routes);
    colours.declare(routes);
  }

  void connect(Client to) {
    client = to;
  }

  /** The client has said something. */
  void heard() {
    lastHeard = System.nanoTime();
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

  Documents documents() {
    return documents;
  }

  Workspace workspace() {
    return workspace;
  }

  Worker worker() {
    return worker;
  }

  Routes routes() {
    return routes;
  }

  Analyses analyses() {
    return analyses;
  }

  Colours colours() {
    return colours;
  }

  Checks checks() {
    return checks;
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
    if (params.get("processId") instanceof JsonPrimitive pid && pid.isNumber()) {
      ParentWatch.watch(pid.getAsLong(), clientGone);
    }
    return ServerCapabilities.answer(encoding, version);
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
        .or(() -> text(params, "rootPath").map(Path::of))
        .ifPresent(workspace::add);
  }

  private static Optional<String> text(JsonObject object, String key) {
    return object.get(key) instanceof JsonPrimitive primitive && primitive.isString()
        ? Optional.of(primitive.getAsString())
        : Optional.empty();
  }

  /** The client has our answer: what can be done ahead of the first keystroke is done now. */
  void started() {
    if (capabilities.has("workspace", "didChangeWatchedFiles", "dynamicRegistration")) {
      client()
          .register(
              new RegistrationParams(
                  List.of(
                      new Registration(
                          "tabor-files",
                          "workspace/didChangeWatchedFiles",
                          new DidChangeWatchedFilesRegistrationOptions(
                              List.of(new FileSystemWatcher(Either.forLeft("**/*.tabor"))))))));
    }
    WarmUp.start(() -> System.nanoTime() - lastHeard < QUIET_NANOS);
  }

  /** Nothing more will be asked. */
  void stop() {
    log.say("shutdown");
  }

  /** Ends what runs. */
  void close() {
    commands.close();
    worker.close();
  }
}
