package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** A client that sends bytes and reads bytes. */
final class RawClient {
  private RawClient() {}

  static final String INITIALIZE =
      """
      {"jsonrpc":"2.0","id":1,"method":"initialize","params":{"capabilities":{}}}\
      """;
  static final String SHUTDOWN = "{\"jsonrpc\":\"2.0\",\"id\":99,\"method\":\"shutdown\"}";
  static final String EXIT = "{\"jsonrpc\":\"2.0\",\"method\":\"exit\"}";

  record Ended(int code, List<JsonObject> messages) {
    JsonObject answer(int id) {
      return messages.stream()
          .filter(m -> m.has("id") && m.get("id").toString().equals(Integer.toString(id)))
          .findFirst()
          .orElseThrow();
    }

    int error(int id) {
      return answer(id).getAsJsonObject("error").get("code").getAsInt();
    }
  }

  static String framed(String json) {
    return "Content-Length: " + json.getBytes(StandardCharsets.UTF_8).length + "\r\n\r\n" + json;
  }

  static Ended run(String... framed) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    byte[] in = String.join("", framed).getBytes(StandardCharsets.UTF_8);
    int code = Connection.serve(new ByteArrayInputStream(in), out, Log.NONE, "test");
    return new Ended(code, messages(out.toString(StandardCharsets.UTF_8)));
  }

  /** Reads everything as framed messages: a stray byte fails here. */
  static List<JsonObject> messages(String out) {
    List<JsonObject> found = new ArrayList<>();
    byte[] bytes = out.getBytes(StandardCharsets.UTF_8);
    int at = 0;
    while (at < bytes.length) {
      String rest = new String(bytes, at, bytes.length - at, StandardCharsets.UTF_8);
      assertThat(rest).startsWith("Content-Length: ");
      int headEnd = rest.indexOf("\r\n\r\n") + 4;
      int length = Integer.parseInt(rest.substring(16, rest.indexOf("\r\n")).strip());
      String body = new String(bytes, at + headEnd, length, StandardCharsets.UTF_8);
      JsonElement json = JsonParser.parseString(body);
      found.add(json.getAsJsonObject());
      at += headEnd + length;
    }
    return found;
  }
}
