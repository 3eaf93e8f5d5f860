package tabor.lsp;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.IntConsumer;
import org.eclipse.lsp4j.jsonrpc.Endpoint;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.jspecify.annotations.Nullable;

/** The life of a session: what may be asked when. Everything else is in {@link Requests}. */
final class Server implements Endpoint {
  private enum State {
    NEW,
    RUNNING,
    DOWN
  }

  private final Session session;
  private final Requests requests;
  private final Log log;
  private final IntConsumer exit;
  private volatile long lastHeard = System.nanoTime();
  private volatile State state = State.NEW;

  /**
   * A server that has not been initialized.
   *
   * @param exit told the exit code when the client says {@code exit}
   */
  Server(Session session, Log log, IntConsumer exit) {
    this.session = session;
    this.log = log;
    this.exit = exit;
    this.requests = session.requests();
    requests.atOnce("initialize", JsonObject.class, this::initialize, "capabilities");
    requests.told("initialized", JsonElement.class, params -> session.started());
    requests.atOnce("shutdown", this::shutdown);
  }

  /** When the client said something last, as {@link System#nanoTime} has it. */
  long lastHeard() {
    return lastHeard;
  }

  private Object initialize(JsonObject params) {
    Object answer = session.initialize(params);
    state = State.RUNNING;
    return answer;
  }

  private @Nullable Object shutdown() {
    state = State.DOWN;
    session.stop();
    return null;
  }

  @Override
  public CompletableFuture<?> request(String method, @Nullable Object params) {
    lastHeard = System.nanoTime();
    boolean first = method.equals("initialize");
    if (state == State.NEW && !first) {
      throw Requests.error(ResponseErrorCode.ServerNotInitialized, "initialize comes first");
    }
    if (state == State.DOWN) {
      throw Requests.error(ResponseErrorCode.InvalidRequest, "the server is shut down");
    }
    if (state == State.RUNNING && first) {
      throw Requests.error(ResponseErrorCode.InvalidRequest, "initialized already");
    }
    return requests.request(method, params);
  }

  @Override
  public void notify(String method, @Nullable Object params) {
    lastHeard = System.nanoTime();
    if (method.equals("exit")) {
      exit.accept(state == State.DOWN ? 0 : 1);
      return;
    }
    if (state != State.RUNNING) {
      return;
    }
    try {
      if (!requests.notify(method, params) && !method.startsWith("$/")) {
        log.say("ignored " + method);
      }
    } catch (RuntimeException e) {
      log.say("in " + method, e);
    }
  }

  /** What a request that failed is answered with. */
  ResponseError failure(Throwable thrown) {
    Throwable cause = thrown;
    while ((cause instanceof CompletionException
            || cause instanceof java.lang.reflect.InvocationTargetException)
        && cause.getCause() != null) {
      cause = cause.getCause();
    }
    if (cause instanceof ResponseErrorException known) {
      return known.getResponseError();
    }
    if (cause instanceof CancellationException) {
      return new ResponseError(ResponseErrorCode.RequestCancelled, "cancelled", null);
    }
    log.say("a request failed", cause);
    return new ResponseError(
        ResponseErrorCode.InternalError,
        "this request failed inside the server (" + cause + "); others are not affected",
        null);
  }
}
