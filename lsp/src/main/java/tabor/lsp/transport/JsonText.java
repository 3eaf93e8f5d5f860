package tabor.lsp.transport;

import com.google.gson.TypeAdapter;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;

/**
 * A value that is written out already. For long lists: LSP4J's classes are walked by reflection,
 * value by value, which takes several times as long as making the list.
 */
public final class JsonText {
  private final StringBuilder text = new StringBuilder(256);

  /** How such a value goes into a message: as it is. */
  public static final class Adapter extends TypeAdapter<JsonText> {
    @Override
    public void write(JsonWriter out, JsonText value) throws IOException {
      out.jsonValue(value.toString());
    }

    @Override
    public JsonText read(JsonReader in) {
      throw new UnsupportedOperationException("only written");
    }
  }

  /** Adds JSON as it stands. */
  public JsonText add(String json) {
    text.append(json);
    return this;
  }

  /** Adds a number. */
  public JsonText add(int number) {
    text.append(number);
    return this;
  }

  /** Adds a comma if something stands before it in this list or object. */
  public JsonText comma() {
    char last = text.length() == 0 ? '[' : text.charAt(text.length() - 1);
    if (last != '[' && last != '{') {
      text.append(',');
    }
    return this;
  }

  /** Adds a place in a text, both numbers from 0. */
  public JsonText position(int line, int character) {
    return add("{\"line\":").add(line).add(",\"character\":").add(character).add("}");
  }

  /** Adds a string in quotes. */
  public JsonText string(String value) {
    text.append('"');
    for (int i = 0; i < value.length(); i++) {
      char c = value.charAt(i);
      if (c == '"' || c == '\\') {
        text.append('\\').append(c);
      } else if (c < ' ' || Character.isSurrogate(c)) {
        text.append("\\u").append(Character.forDigit(c >> 12, 16));
        text.append(Character.forDigit(c >> 8 & 15, 16));
        text.append(Character.forDigit(c >> 4 & 15, 16)).append(Character.forDigit(c & 15, 16));
      } else {
        text.append(c);
      }
    }
    text.append('"');
    return this;
  }

  @Override
  public String toString() {
    return text.toString();
  }
}
