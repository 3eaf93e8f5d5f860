package tabor.lsp;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import org.eclipse.lsp4j.TextDocumentPositionParams;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.lsp.Scheduler.Lane;
import tabor.lsp.Scheduler.Wanted;
import tabor.lsp.transport.MethodTable;

/** Which method is answered by what, and in which lane. */
final class Requests {
  /** Answers a request about an open file, as that file was when the request came. */
  interface InFile<P> {
    @Nullable Object answer(FileContext file, P params);
  }

  /** Answers a request that needs no more than an open file's text. */
  interface InText<P> {
    @Nullable Object answer(OpenDocument document, P params);
  }

  /** Answers a request about the workspace. */
  interface InWorkspace<P> {
    @Nullable Object answer(P params, LaneLibrary library, Wanted wanted);
  }

  private final MethodTable methods = new MethodTable();
  private final Map<String, Function<@Nullable Object, CompletableFuture<?>>> answers =
      new HashMap<>();
  private final Map<String, Consumer<@Nullable Object>> sinks = new HashMap<>();
  private final Session session;

  /** Answers in the making that the next edit of their file makes worthless. */
  private final Map<Path, Map<Long, CompletableFuture<?>>> fragile = new ConcurrentHashMap<>();

  private final AtomicLong numbers = new AtomicLong();

  Requests(Session session) {
    this.session = session;
  }

  /** The methods with their parameters. */
  MethodTable methods() {
    return methods;
  }

  private void add(String method, Class<?> type, boolean notification, List<String> required) {
    methods.add(method, new MethodTable.Method(type, notification, required));
  }

  /** A notification, taken in at once, in the order of the messages. */
  <P> void told(String method, Class<P> type, Consumer<P> sink, String... required) {
    add(method, type, true, List.of(required));
    sinks.put(method, params -> sink.accept(cast(method, type, params)));
  }

  /** A request that is answered at once. */
  <P> void atOnce(String method, Class<P> type, Function<P, Object> handler, String... required) {
    futures(
        method, type, given -> CompletableFuture.completedFuture(handler.apply(given)), required);
  }

  /** A request without parameters that is answered at once. */
  void atOnce(String method, Supplier<@Nullable Object> handler) {
    add(method, Void.class, false, List.of());
    answers.put(method, params -> CompletableFuture.completedFuture(handler.get()));
  }

  /** A request that is answered by whatever future the handler gives. */
  <P> void futures(
      String method, Class<P> type, Function<P, CompletableFuture<?>> handler, String... required) {
    add(method, type, false, List.of(required));
    answers.put(method, params -> handler.apply(cast(method, type, params)));
  }

  /** A request about the workspace. */
  <P> void inWorkspace(
      Lane lane, String method, Class<P> type, InWorkspace<P> handler, String... required) {
    futures(
        method,
        type,
        given ->
            session
                .scheduler()
                .submit(
                    lane,
                    wanted -> handler.answer(given, session.library(lane).serving(wanted), wanted)),
        required);
  }

  /** A request about an open file. */
  <P> void inFile(
      Lane lane,
      String method,
      Class<P> type,
      Function<P, String> uri,
      InFile<P> handler,
      String... required) {
    futures(
        method,
        type,
        given -> inFile(lane, document(uri.apply(given)), file -> handler.answer(file, given)),
        with("textDocument.uri", required));
  }

  /** A request about the text of an open file. */
  <P> void inText(
      Lane lane,
      String method,
      Class<P> type,
      Function<P, String> uri,
      InText<P> handler,
      String... required) {
    futures(
        method,
        type,
        given -> {
          OpenDocument document = document(uri.apply(given));
          return session.scheduler().submit(lane, wanted -> handler.answer(document, given));
        },
        with("textDocument.uri", required));
  }

  /** {@linkplain #inFile A request about an open file} that asks about a place in it. */
  <P extends TextDocumentPositionParams> void atPlace(
      Lane lane, String method, Class<P> type, InFile<P> handler, String... required) {
    inFile(
        lane,
        method,
        type,
        params -> params.getTextDocument().getUri(),
        handler,
        with("position", required));
  }

  private static String[] with(String first, String... others) {
    List<String> all = new ArrayList<>(List.of(others));
    all.add(0, first);
    return all.toArray(String[]::new);
  }

  /**
   * An answer about an open file: it is compiled, if it is not yet, by the typing lane, and looked
   * at in its own.
   */
  CompletableFuture<Object> inFile(
      Lane lane, OpenDocument document, Function<FileContext, @Nullable Object> handler) {
    CompletableFuture<Object> answer = new CompletableFuture<>();
    if (lane == Lane.FIXING) {
      breakable(document.path(), answer);
    }
    Scheduler scheduler = session.scheduler();
    Optional<Compiled> known = session.compiled().known(document);
    if (known.isPresent() || lane == Lane.TYPING) {
      scheduler.submit(
          lane,
          answer,
          wanted -> {
            Compiled compiled = known.orElseGet(() -> session.compiled().of(document));
            return handler.apply(context(lane, document, compiled, wanted));
          });
    } else {
      scheduler.attempt(
          Lane.TYPING,
          answer,
          () -> {
            Compiled compiled = session.compiled().of(document);
            scheduler.submit(
                lane, answer, wanted -> handler.apply(context(lane, document, compiled, wanted)));
          });
    }
    return answer;
  }

  private FileContext context(Lane lane, OpenDocument document, Compiled compiled, Wanted wanted) {
    return new FileContext(
        session, document, compiled, session.library(lane).serving(wanted), wanted);
  }

  private void breakable(Path path, CompletableFuture<?> answer) {
    Map<Long, CompletableFuture<?>> here =
        fragile.computeIfAbsent(path, p -> new ConcurrentHashMap<>());
    long number = numbers.getAndIncrement();
    here.put(number, answer);
    CompletableFuture<?> unused = answer.whenComplete((result, problem) -> here.remove(number));
  }

  /** A file was changed: what is being tried out on its old text is given up. */
  void edited(Path path) {
    for (CompletableFuture<?> answer : fragile.getOrDefault(path, Map.of()).values()) {
      answer.completeExceptionally(
          error(ResponseErrorCode.ContentModified, "the text was changed meanwhile"));
    }
  }

  /** The open file of a URI; an error of the request if there is none. */
  OpenDocument document(String uri) {
    return session
        .documents()
        .find(uri)
        .orElseThrow(() -> invalid("not an open file: " + shortened(uri)));
  }

  private static String shortened(String uri) {
    return uri.length() <= 200 ? uri : uri.substring(0, 200) + " …";
  }

  private static <P> P cast(String method, Class<P> type, @Nullable Object params) {
    if (!type.isInstance(params)) {
      throw invalid(method + " needs parameters");
    }
    return type.cast(params);
  }

  /** Answers a request; throws for a method that nobody answers. */
  CompletableFuture<?> request(String method, @Nullable Object params) {
    Function<@Nullable Object, CompletableFuture<?>> answer = answers.get(method);
    if (answer == null) {
      throw error(ResponseErrorCode.MethodNotFound, "no method " + shortened(method));
    }
    return answer.apply(params);
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

  /** What a request fails with whose parameters are not those of its method. */
  static ResponseErrorException invalid(String message) {
    return error(ResponseErrorCode.InvalidParams, message);
  }

  /** What a request fails with that was understood and cannot be done; said in words. */
  static ResponseErrorException refused(String message) {
    return error(ResponseErrorCode.RequestFailed, message);
  }
}
