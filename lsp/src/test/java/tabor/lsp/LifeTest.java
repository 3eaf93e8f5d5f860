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
import org.junit.jupiter.api.Test;

/** Raw bytes in, raw bytes out: what a session may be asked when, and what it survives. */
class LifeTest {
  private static final String INITIALIZE =
      """
      {"jsonrpc":"2.0","id":1,"method":"initialize","params":{"capabilities":{}}}\
      """;
  private static final String SHUTDOWN = "{\"jsonrpc\":\"2.0\",\"id\":99,\"method\":\"shutdown\"}";
  private static final String EXIT = "{\"jsonrpc\":\"2.0\",\"method\":\"exit\"}";

  private record Ended(int code, List<JsonObject> messages) {
    JsonObject answer(int id) {
      return messages.stream()
          .filter(m -> m.has("id") && m.get("id").isJsonPrimitive() && m.get("id").getAsInt() == id)
          .findFirst()
          .orElseThrow();
    }

    int error(int id) {
      return answer(id).getAsJsonObject("error").get("code").getAsInt();
    }
  }

  private static String framed(String json) {
    return "Content-Length: " + json.getBytes(StandardCharsets.UTF_8).length + "\r\n\r\n" + json;
  }

  private static Ended run(String... framed) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    byte[] in = String.join("", framed).getBytes(StandardCharsets.UTF_8);
    int code = Connection.serve(new ByteArrayInputStream(in), out, Log.NONE, "test");
    return new Ended(code, messages(out.toString(StandardCharsets.UTF_8)));
  }

  /** Reads everything as framed messages: a stray byte fails here. */
  private static List<JsonObject> messages(String out) {
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

  @Test
  void aProperSessionEndsWithZero() {
    Ended ended = run(framed(INITIALIZE), framed(SHUTDOWN), framed(EXIT));
    assertThat(ended.code).isZero();
    assertThat(ended.answer(1).getAsJsonObject("result").has("capabilities")).isTrue();
    assertThat(ended.answer(99).has("error")).isFalse();
  }

  @Test
  void leavingWithoutShutdownEndsWithOne() {
    assertThat(run(framed(INITIALIZE), framed(EXIT)).code).isEqualTo(1);
    assertThat(run(framed(INITIALIZE)).code).isEqualTo(1);
    assertThat(run("").code).isEqualTo(1);
  }

  @Test
  void nothingIsAnsweredBeforeInitializeOrAfterShutdown() {
    String hover =
        "{\"jsonrpc\":\"2.0\",\"id\":%d,\"method\":\"textDocument/hover\",\"params\":%s}";
    String params =
        "{\"textDocument\":{\"uri\":\"file:///a\"},\"position\":{\"line\":0,\"character\":0}}";
    Ended ended =
        run(
            framed(hover.formatted(5, params)),
            framed(INITIALIZE),
            framed(INITIALIZE.replace("\"id\":1", "\"id\":2")),
            framed(SHUTDOWN),
            framed(hover.formatted(6, params)),
            framed(EXIT));
    assertThat(ended.error(5)).isEqualTo(-32002);
    assertThat(ended.error(2)).isEqualTo(-32600);
    assertThat(ended.error(6)).isEqualTo(-32600);
  }

  @Test
  void unknownMethodsAndMissingParametersAreErrorsOfThatRequest() {
    Ended ended =
        run(
            framed(INITIALIZE),
            framed(
                "{\"jsonrpc\":\"2.0\",\"id\":7,\"method\":\"textDocument/makeTea\",\"params\":{}}"),
            framed("{\"jsonrpc\":\"2.0\",\"method\":\"$/whatever\",\"params\":[1]}"),
            framed("{\"jsonrpc\":\"2.0\",\"id\":8,\"method\":\"textDocument/diagnostic\"}"),
            framed(SHUTDOWN),
            framed(EXIT));
    assertThat(ended.error(7)).isEqualTo(-32601);
    assertThat(ended.error(8)).isEqualTo(-32602);
    assertThat(ended.code).isZero();
  }

  @Test
  void whatIsNoMessageIsSurvived() {
    Ended ended =
        run(
            framed(INITIALIZE),
            framed("{\"jsonrpc\":\"2.0\",\"id\":"),
            framed("[1,2"),
            framed("true"),
            framed(
                "{\"jsonrpc\":\"2.0\",\"id\":3,\"method\":\"textDocument/didOpen\",\"params\":17}"),
            framed("{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didOpen\",\"params\":{}}"),
            framed("{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didChange\",\"params\":null}"),
            framed("{\"jsonrpc\":\"2.0\",\"id\":123,\"result\":null}"),
            "Content-Length: x\r\n\r\n",
            "Nonsense\r\n\r\n",
            framed(SHUTDOWN),
            framed(EXIT));
    assertThat(ended.code).isZero();
    assertThat(ended.answer(99).has("error")).isFalse();
  }
}
