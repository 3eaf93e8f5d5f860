package tabor.lsp;

import java.lang.reflect.Type;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import java.util.function.Function;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.json.JsonRpcMethod;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.jspecify.annotations.Nullable;

/**
 * Which method is answered by what. A plain table in place of LSP4J's annotated interfaces: those
 * are read by reflection, method by method, before the first message can be, which is a good part
 * of the time an editor waits for its server.
 */
final class Routes {
  /** Answers a request. */
  private interface Answer {
    CompletableFuture<?> to(@Nullable Object params);
  }

  /** Answers a request about an open file, as that file was when the request came. */
  interface About<P> {
    @Nullable Object answer(Document document, P params, Worker.Wanted wanted);
  }

  /** Answers a request from the worker. */
  interface Asked<P> {
    @Nullable Object answer(P params, Worker.Wanted wanted);
  }

  private final Map<String, JsonRpcMethod> methods = new LinkedHashMap<>();
  private final Map<String, Answer> answers = new HashMap<>();
  private final Map<String, Consumer<@Nullable Object>> sinks = new HashMap<>();
  private final Documents documents;
  private final Worker worker;

  Routes(Documents documents, Worker worker) {
    this.documents = documents;
    this.worker = worker;
  }

  /** The methods for LSP4J's reader: the type of each one's parameters. */
  Map<String, JsonRpcMethod> methods() {
    return methods;
  }

  /** A request of ours to the client, so that its answer can be read. */
  void outgoing(String method, Type result) {
    methods.put(method, JsonRpcMethod.request(method, result, Object.class));
  }

  /** A notification, taken in at once, in the order of the messages. */
  <P> void told(String method, Class<P> type, Consumer<P> sink) {
    methods.put(method, JsonRpcMethod.notification(method, type));
    sinks.put(method, params -> sink.accept(cast(method, type, params)));
  }

  /** A request that is answered at once by the reading thread. */
  <P> void asked(String method, Class<P> type, Function<P, @Nullable Object> handler) {
    methods.put(method, JsonRpcMethod.request(method, Object.class, type));
    answers.put(
        method,
        params -> CompletableFuture.completedFuture(handler.apply(cast(method, type, params))));
  }

  /** A request without parameters, answered at once. */
  void asked(String method, java.util.function.Supplier<@Nullable Object> handler) {
    methods.put(method, JsonRpcMethod.request(method, Object.class));
    answers.put(method, params -> CompletableFuture.completedFuture(handler.get()));
  }

  /** A request that the worker answers in its turn. */
  <P> void queued(String method, Class<P> type, Asked<P> handler) {
    methods.put(method, JsonRpcMethod.request(method, Object.class, type));
    answers.put(
        method,
        params -> {
          P given = cast(method, type, params);
          return worker.submit(wanted -> handler.answer(given, wanted));
        });
  }

  /** A request about a file, which the worker answers in its turn. */
  <P> void about(String method, Class<P> type, Function<P, String> uri, About<P> handler) {
    methods.put(method, JsonRpcMethod.request(method, Object.class, type));
    answers.put(
        method,
        params -> {
          P given = cast(method, type, params);
          Document document =
              documents
                  .find(uri.apply(given))
                  .orElseThrow(() -> error(ResponseErrorCode.InvalidParams, "not an open file"));
          return worker.submit(wanted -> handler.answer(document, given, wanted));
        });
  }

  private static <P> P cast(String method, Class<P> type, @Nullable Object params) {
    if (!type.isInstance(params)) {
      throw error(ResponseErrorCode.InvalidParams, method + " needs parameters");
    }
    return type.cast(params);
  }

  /** Answers a request; throws for a method that nobody answers. */
  CompletableFuture<?> request(String method, @Nullable Object params) {
    Answer answer = answers.get(method);
    if (answer == null) {
      throw error(ResponseErrorCode.MethodNotFound, "no method " + method);
    }
    return answer.to(params);
  }

  /** Takes a notification in; false for one that nobody takes. */
  boolean notify(String method, @Nullable Object params) {
    Consumer<@Nullable Object> sink = sinks.get(method);
    if (sink == null) {
      return false;
    }
    sink.accept(params);
    return true;
  }

  /** What a request fails with. */
  static ResponseErrorException error(ResponseErrorCode code, String message) {
    return new ResponseErrorException(new ResponseError(code, message, null));
  }
}
