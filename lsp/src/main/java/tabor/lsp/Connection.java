package tabor.lsp;

import com.google.gson.GsonBuilder;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.jsonrpc.RemoteEndpoint;
import org.eclipse.lsp4j.jsonrpc.json.MessageJsonHandler;
import org.eclipse.lsp4j.jsonrpc.json.StreamMessageConsumer;
import tabor.lsp.transport.FrameReader;
import tabor.lsp.transport.JsonText;
import tabor.lsp.transport.MessageReader;

/** Puts a server between two streams. */
final class Connection {
  /** How long a client has been silent when it is not waiting for anything. */
  private static final long QUIET_NANOS = 2_000_000;

  private final Log log;
  private final Duration patience;
  private final CompletableFuture<Integer> done = new CompletableFuture<>();
  private final Session session;
  private final Server server;

  /**
   * A connection over which nothing has been said.
   *
   * @param patience how long one piece of work may go on when the client has left
   */
  Connection(Log log, String version, Duration patience) {
    this.log = log;
    this.patience = patience;
    this.session = new Session(log, version, () -> done.complete(1));
    this.server = new Server(session, log, done::complete);
  }

  Session session() {
    return session;
  }

  /** True while the client waits for something, or has just said something. */
  boolean isBusy() {
    return session.scheduler().isTyping() || System.nanoTime() - server.lastHeard() < QUIET_NANOS;
  }

  /** Serves on a new connection, patiently: what was asked before the end is answered. */
  static int serve(InputStream in, OutputStream out, Log log, String version) {
    return new Connection(log, version, Duration.ofMinutes(1)).serve(in, out);
  }

  /**
   * Serves until the client says {@code exit}, closes its end or dies.
   *
   * @return the exit code: 0 after {@code shutdown}, else 1
   */
  int serve(InputStream in, OutputStream out) {
    MessageJsonHandler json = new MessageJsonHandler(Map.of(), Connection::values);
    StreamMessageConsumer writer = new StreamMessageConsumer(out, json);
    RemoteEndpoint remote = new RemoteEndpoint(writer, server, server::failure);
    remote.setJsonHandler(json);
    json.setMethodProvider(remote);
    session.connect(new Client(remote));
    FrameReader frames = new FrameReader(in);
    session.scheduler().moreToRead(frames::hasMore);
    MessageReader reader =
        new MessageReader(frames, session.requests().methods(), json, remote, writer, log::say);
    Thread reading =
        new Thread(
            null,
            () -> {
              try {
                reader.run();
              } finally {
                done.complete(1); // the client closed its end without saying exit
              }
            },
            "tabor-reader",
            Scheduler.STACK_BYTES);
    reading.setDaemon(true);
    reading.start();
    try {
      int code = done.get();
      if (session.close(patience)) {
        out.flush(); // else what still runs may be writing to a client that reads no more
      }
      log.say("exit " + code);
      return code;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return 1;
    } catch (ExecutionException | IOException e) {
      return 1;
    }
  }

  private static void values(GsonBuilder builder) {
    builder.registerTypeAdapter(JsonText.class, new JsonText.Adapter());
    builder.registerTypeAdapter(Position.class, new PositionAdapter());
  }
}
