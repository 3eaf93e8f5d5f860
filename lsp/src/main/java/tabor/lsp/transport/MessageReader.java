package tabor.lsp.transport;

import com.google.gson.Gson;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import com.google.gson.Strictness;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonToken;
import java.io.IOException;
import java.io.StringReader;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.lsp4j.jsonrpc.MessageConsumer;
import org.eclipse.lsp4j.jsonrpc.json.MessageJsonHandler;
import org.eclipse.lsp4j.jsonrpc.messages.CancelParams;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.Message;
import org.eclipse.lsp4j.jsonrpc.messages.NotificationMessage;
import org.eclipse.lsp4j.jsonrpc.messages.RequestMessage;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseMessage;
import org.jspecify.annotations.Nullable;

/**
 * Reads messages off a stream until it ends. What is no message is answered with the error that
 * JSON-RPC gives it, and the next one is read.
 */
public final class MessageReader {
  /** Whole numbers that every client can hold exactly; the protocol itself gives 32 bits. */
  private static final Pattern NUMBER = Pattern.compile("-?[0-9]{1,15}");

  /** Where the library says that it found a mistake. */
  private static final Pattern PLACE = Pattern.compile("at line [0-9]+ column [0-9]+");

  private static final int LONGEST_WORDS = 300;

  private final FrameReader frames;
  private final MethodTable methods;
  private final Gson gson;
  private final MessageConsumer sink;
  private final MessageConsumer answers;
  private final Complaint complaint;

  /** Told what was wrong with a message. */
  public interface Complaint {
    /** Takes a line in, and the cause if there is one. */
    void about(String line, @Nullable Throwable cause);
  }

  /** A message that is none. */
  private static final class Refused extends Exception {
    private static final long serialVersionUID = 1;
    private final transient @Nullable ResponseMessage answer;

    /** A notification, which is never answered. */
    Refused(String words, @Nullable Throwable cause) {
      super(words, cause);
      answer = null;
    }

    Refused(
        ResponseErrorCode code,
        String words,
        @Nullable Either<String, Number> id,
        @Nullable Throwable cause) {
      super(shortened(words), cause);
      answer = new ResponseMessage();
      answer.setRawId(id);
      answer.setError(new ResponseError(code, shortened(words), null));
    }

    /** A message may quote a good part of what was sent. */
    private static String shortened(String words) {
      return words.length() <= LONGEST_WORDS ? words : words.substring(0, LONGEST_WORDS) + " …";
    }
  }

  /**
   * A reader.
   *
   * @param sink takes the messages
   * @param answers takes the answers to what is none
   */
  public MessageReader(
      FrameReader frames,
      MethodTable methods,
      MessageJsonHandler json,
      MessageConsumer sink,
      MessageConsumer answers,
      Complaint complaint) {
    this.frames = frames;
    this.methods = methods;
    this.gson = json.getGson();
    this.sink = sink;
    this.answers = answers;
    this.complaint = complaint;
  }

  /** Reads until the stream ends. */
  public void run() {
    try {
      for (FrameReader.Frame next = frames.next(); next != null; next = frames.next()) {
        take(next);
      }
    } catch (IOException e) {
      complaint.about("the client's stream broke", e);
    }
  }

  private void take(FrameReader.Frame frame) {
    try {
      if (frame.problem() != null) {
        throw new Refused(
            ResponseErrorCode.ParseError, "not a message: " + frame.problem(), null, null);
      }
      Optional<Message> message = message(parse(frame));
      if (message.isPresent()) {
        sink.consume(message.get());
      }
    } catch (Refused e) {
      complaint.about("refused: " + e.getMessage(), e.getCause());
      if (e.answer != null) {
        answers.consume(e.answer);
      }
    } catch (RuntimeException | StackOverflowError e) {
      complaint.about("a message failed", e); // whatever a handler throws, the next one is read
    }
  }

  private JsonElement parse(FrameReader.Frame frame) throws Refused {
    String body = frame.body();
    try (JsonReader reader = strict(body)) {
      if (body.isBlank()) {
        throw notJson(frame, "nothing there", null);
      }
      // However long a batch is, it is not kept.
      boolean batch = reader.peek() == JsonToken.BEGIN_ARRAY;
      JsonElement root = new JsonArray();
      if (batch) {
        reader.setNestingLimit(Integer.MAX_VALUE);
        reader.skipValue();
      } else {
        root = JsonParser.parseReader(reader);
      }
      if (reader.peek() != JsonToken.END_DOCUMENT) {
        throw notJson(frame, "more than one value", null);
      }
      return root;
    } catch (JsonParseException | IOException | IllegalStateException | NumberFormatException e) {
      String why = String.valueOf(innermost(e).getMessage());
      // Well formed after all, but deeper than anyone writes by hand or program?
      Optional<Either<String, Number>> id =
          why.startsWith("Nesting") ? idOfDeep(body) : Optional.empty();
      if (id.isPresent()) {
        throw new Refused(ResponseErrorCode.InvalidRequest, "nested too deep", id.get(), null);
      }
      Matcher place = PLACE.matcher(why);
      throw notJson(frame, place.find() ? "a mistake " + place.group() : "a mistake in it", e);
    }
  }

  private Refused notJson(FrameReader.Frame frame, String words, @Nullable Throwable cause) {
    frames.broken(frame);
    return new Refused(ResponseErrorCode.ParseError, "not JSON: " + words, null, cause);
  }

  private static JsonReader strict(String body) {
    JsonReader reader = new JsonReader(new StringReader(body));
    reader.setStrictness(Strictness.STRICT);
    return reader;
  }

  /** The id of a message whose values are passed over unread; empty if it is not JSON. */
  private static Optional<Either<String, Number>> idOfDeep(String body) {
    try (JsonReader reader = strict(body)) {
      reader.setNestingLimit(Integer.MAX_VALUE);
      JsonElement id = null;
      reader.beginObject();
      while (reader.hasNext()) {
        if (reader.nextName().equals("id") && reader.peek() != JsonToken.BEGIN_OBJECT) {
          id = JsonParser.parseReader(reader);
        } else {
          reader.skipValue();
        }
      }
      reader.endObject();
      return reader.peek() == JsonToken.END_DOCUMENT && id != null ? id(id) : Optional.empty();
    } catch (IOException | IllegalStateException | JsonParseException | NumberFormatException e) {
      return Optional.empty();
    }
  }

  private static Optional<Either<String, Number>> id(@Nullable JsonElement given) {
    if (!(given instanceof JsonPrimitive primitive) || primitive.isBoolean()) {
      return Optional.empty();
    }
    if (primitive.isString()) {
      return Optional.of(Either.forLeft(primitive.getAsString()));
    }
    String number = primitive.getAsString();
    if (!NUMBER.matcher(number).matches()) {
      return Optional.empty();
    }
    long value = Long.parseLong(number);
    return Optional.of(
        value == (int) value ? Either.forRight((int) value) : Either.forRight(value));
  }

  private static Refused invalid(String words, @Nullable Either<String, Number> id) {
    return new Refused(ResponseErrorCode.InvalidRequest, words, id, null);
  }

  private Optional<Message> message(JsonElement root) throws Refused {
    if (root.isJsonArray()) {
      throw invalid("batches are not part of the protocol; send each message by itself", null);
    }
    if (!(root instanceof JsonObject object)) {
      throw invalid("a message is an object", null);
    }
    Either<String, Number> id = id(object.get("id")).orElse(null);
    JsonElement method = object.get("method");
    if (method == null) {
      return response(object, id);
    }
    if (!(method instanceof JsonPrimitive name) || !name.isString()) {
      throw invalid("the method's name is a string", id);
    }
    if (object.has("id") && id == null) {
      throw invalid("an id is a string or a whole number of at most 15 digits", null);
    }
    return id == null
        ? Optional.of(notification(name.getAsString(), object.get("params")))
        : Optional.of(request(name.getAsString(), id, object.get("params")));
  }

  private Optional<Message> response(JsonObject object, @Nullable Either<String, Number> id)
      throws Refused {
    if (!object.has("result") && !object.has("error")) {
      throw invalid("neither a method nor a result nor an error", id);
    }
    if (id == null) {
      complaint.about("an answer to nothing: " + object.get("error"), null);
      return Optional.empty();
    }
    ResponseMessage made = new ResponseMessage();
    made.setRawId(id);
    if (object.get("error") instanceof JsonObject error) {
      String words = String.valueOf(error.get("message"));
      made.setError(new ResponseError(ResponseErrorCode.UnknownErrorCode, words, null));
    } else {
      made.setResult(object.get("result"));
    }
    return Optional.of(made);
  }

  private Message request(String name, Either<String, Number> id, @Nullable JsonElement params)
      throws Refused {
    RequestMessage made = new RequestMessage();
    made.setRawId(id);
    made.setMethod(name);
    MethodTable.Method method = methods.find(name).orElse(null);
    if (method != null) {
      made.setParams(parameters(name, method, params, id));
    }
    return made;
  }

  private Message notification(String name, @Nullable JsonElement params) throws Refused {
    NotificationMessage made = new NotificationMessage();
    made.setMethod(name);
    if (name.equals(MessageJsonHandler.CANCEL_METHOD.getMethodName())) {
      CancelParams cancelled = new CancelParams();
      cancelled.setRawId(
          id(params instanceof JsonObject object ? object.get("id") : null)
              .orElse(Either.forLeft("")));
      made.setParams(cancelled);
      return made;
    }
    MethodTable.Method method = methods.find(name).orElse(null);
    if (method != null) {
      made.setParams(parameters(name, method, params, null));
    }
    return made;
  }

  private @Nullable Object parameters(
      String name,
      MethodTable.Method method,
      @Nullable JsonElement params,
      @Nullable Either<String, Number> id)
      throws Refused {
    if (method.parameters() == Void.class) {
      return null;
    }
    JsonElement given = params == null ? new JsonObject() : params;
    for (String path : method.required()) {
      if (!isThere(given, path)) {
        throw wrong(name + ": " + path + " is missing", id, null);
      }
    }
    try {
      return gson.fromJson(given, method.parameters());
    } catch (JsonParseException | IllegalStateException | NumberFormatException e) {
      String why = innermost(e).getMessage();
      throw wrong(name + ": the parameters cannot be read: " + why, id, e);
    }
  }

  private static Refused wrong(
      String words, @Nullable Either<String, Number> id, @Nullable Throwable cause) {
    return id == null
        ? new Refused(words, cause)
        : new Refused(ResponseErrorCode.InvalidParams, words, id, cause);
  }

  private static Throwable innermost(Throwable thrown) {
    return thrown.getCause() == null ? thrown : innermost(thrown.getCause());
  }

  private static boolean isThere(JsonElement from, String path) {
    JsonElement at = from;
    for (String step : path.split("\\.", -1)) {
      if (!(at instanceof JsonObject object)) {
        return false;
      }
      at = object.get(step);
    }
    return at != null && !at.isJsonNull();
  }
}
