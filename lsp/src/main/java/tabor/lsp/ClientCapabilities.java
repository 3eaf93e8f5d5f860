package tabor.lsp;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.ArrayList;
import java.util.List;

/**
 * What the client said it can do. Kept as the JSON it came as: reading it into LSP4J's classes
 * would load some three hundred of them before the first answer, for a dozen facts.
 */
final class ClientCapabilities {
  private final JsonObject json;

  ClientCapabilities(JsonObject json) {
    this.json = json;
  }

  /** True if the value at this path is {@code true}, or an object. */
  boolean has(String... path) {
    JsonElement found = find(path);
    return found.isJsonObject()
        || (found instanceof JsonPrimitive primitive
            && primitive.isBoolean()
            && primitive.getAsBoolean());
  }

  /** The strings of the list at this path. */
  List<String> list(String... path) {
    List<String> found = new ArrayList<>();
    if (find(path) instanceof JsonArray array) {
      for (JsonElement item : array) {
        if (item instanceof JsonPrimitive primitive && primitive.isString()) {
          found.add(primitive.getAsString());
        }
      }
    }
    return found;
  }

  /** The numbers of the list at this path. */
  List<Integer> numbers(String... path) {
    List<Integer> found = new ArrayList<>();
    if (find(path) instanceof JsonArray array) {
      for (JsonElement item : array) {
        if (item instanceof JsonPrimitive primitive && primitive.isNumber()) {
          found.add(primitive.getAsInt());
        }
      }
    }
    return found;
  }

  private JsonElement find(String... path) {
    JsonElement at = json;
    for (String step : path) {
      if (!(at instanceof JsonObject object) || !object.has(step)) {
        return com.google.gson.JsonNull.INSTANCE;
      }
      at = object.get(step);
    }
    return at;
  }
}
