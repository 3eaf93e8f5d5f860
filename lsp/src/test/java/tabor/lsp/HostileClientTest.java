package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Messages that are none, short and long: each gets the right error, and the next is answered. */
class HostileClientTest {
  private static final String OPEN =
      "{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didOpen\",\"params\":{\"textDocument\":"
          + "{\"uri\":\"file:///none/a.tabor\",\"languageId\":\"tabor\",\"version\":1,"
          + "\"text\":\"groove a\\n  hands : rl rl rl rl\\n\"}}}";
  private static final String HOVER =
      "{\"jsonrpc\":\"2.0\",\"id\":50,\"method\":\"textDocument/hover\",\"params\":{\"textDocument\":"
          + "{\"uri\":\"file:///none/a.tabor\"},\"position\":{\"line\":0,\"character\":8}}}";

  /** Sends something between opening a file and asking about it. */
  private static RawClient.Ended between(String sent) {
    RawClient.Ended ended =
        RawClient.run(
            RawClient.framed(RawClient.INITIALIZE),
            RawClient.framed(OPEN),
            sent,
            RawClient.framed(HOVER),
            RawClient.framed(RawClient.SHUTDOWN),
            RawClient.framed(RawClient.EXIT));
    assertThat(ended.code()).isZero();
    assertThat(ended.answer(50).get("result").toString()).contains("4/4");
    return ended;
  }

  /** The codes of the errors that were answered without an id. */
  private static List<Integer> unnamed(RawClient.Ended ended) {
    return ended.messages().stream()
        .filter(m -> m.has("error") && (!m.has("id") || m.get("id").isJsonNull()))
        .map(m -> m.getAsJsonObject("error").get("code").getAsInt())
        .toList();
  }

  private static String request(String id, String method, String params) {
    return "{\"jsonrpc\":\"2.0\",\"id\":"
        + id
        + ",\"method\":\""
        + method
        + "\",\"params\":"
        + params
        + "}";
  }

  private static String padding(int bytes) {
    return "x".repeat(bytes);
  }

  @ParameterizedTest
  @ValueSource(ints = {10, 9 << 10, 1 << 20, 10 << 20})
  void aSyntaxErrorIsAParseError(int size) {
    String broken = "{\"jsonrpc\":\"2.0\",\"id\":7,\"method\":\"" + padding(size) + "\",]";
    assertThat(unnamed(between(RawClient.framed(broken)))).containsExactly(-32700);
    RawClient.Ended ended = between(RawClient.framed(padding(size)));
    assertThat(unnamed(ended)).containsExactly(-32700);
    assertThat(words(ended)).contains("not JSON").doesNotContain("gson", "Exception");
    // Read on leniently, this would be a message with a name nobody gave it.
    String raw = request("7", "make\u0000tea", "{\"a\":\"" + padding(size) + "\"}");
    assertThat(unnamed(between(RawClient.framed(raw)))).containsExactly(-32700);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{}",
        "{\"line\":0}",
        "{\"character\":8}",
        "{\"line\":0,\"character\":null}",
        "{\"line\":0,\"character\":8.5}",
        "{\"line\":\"0\",\"character\":8}",
        "{\"line\":[],\"character\":8}",
        "[0,8]",
        "8"
      })
  void halfAPositionIsNotTheFirstOne(String position) {
    String file = "{\"textDocument\":{\"uri\":\"file:///none/a.tabor\"},";
    for (String sent :
        List.of(
            request("7", "textDocument/hover", file + "\"position\":" + position + "}"),
            request("7", "textDocument/selectionRange", file + "\"positions\":[" + position + "]}"),
            request("7", "textDocument/selectionRange", file + "\"positions\":[null]}"))) {
      RawClient.Ended ended = between(RawClient.framed(sent));
      assertThat(ended.error(7)).as(sent).isEqualTo(-32602);
      assertThat(words(ended)).as(sent).contains("a line and a character");
    }
  }

  @Test
  void aColumnFarBeyondTheLineIsItsEnd() {
    String params =
        "{\"textDocument\":{\"uri\":\"file:///none/a.tabor\"},"
            + "\"position\":{\"line\":0,\"character\":4294967295}}";
    RawClient.Ended ended = between(RawClient.framed(request("7", "textDocument/hover", params)));
    assertThat(ended.answer(7).getAsJsonObject("result").getAsJsonObject("range"))
        .isEqualTo(ended.answer(50).getAsJsonObject("result").getAsJsonObject("range"));
  }

  @ParameterizedTest
  @ValueSource(ints = {10, 9 << 10, 1 << 20, 10 << 20})
  void aWrongTypeIsAnErrorOfThatRequestInWords(int size) {
    String params =
        "{\"textDocument\":{\"uri\":\"file:///none/a.tabor\"},\"position\":{\"line\":\""
            + padding(size)
            + "\",\"character\":0}}";
    RawClient.Ended ended = between(RawClient.framed(request("7", "textDocument/hover", params)));
    assertThat(ended.error(7)).isEqualTo(-32602);
    assertThat(ended.answer(7).getAsJsonObject("error").get("message").getAsString())
        .startsWith("textDocument/hover: the parameters cannot be read")
        .hasSizeLessThan(600);
    String list = "[\"" + padding(size) + "\"]";
    assertThat(between(RawClient.framed(request("8", "textDocument/hover", list))).error(8))
        .isEqualTo(-32602);
    String missing = "{\"textDocument\":{\"uri\":\"" + padding(size) + "\"}}";
    ended = between(RawClient.framed(request("9", "textDocument/hover", missing)));
    assertThat(ended.error(9)).isEqualTo(-32602);
    assertThat(ended.answer(9).toString()).contains("position is missing");
    // A notification is never answered.
    String told =
        "{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didChange\",\"params\":" + list + "}";
    assertThat(between(RawClient.framed(told)).messages())
        .extracting(m -> m.has("id") || m.has("method"))
        .doesNotContain(false);
  }

  @ParameterizedTest
  @ValueSource(ints = {10, 9 << 10, 1 << 20, 10 << 20})
  void aBatchIsAnInvalidRequest(int size) {
    String one = request("7", "textDocument/hover", "{}");
    StringBuilder batch = new StringBuilder("[" + one);
    while (batch.length() < size) {
      batch.append(',').append(one);
    }
    assertThat(unnamed(between(RawClient.framed(batch + "]")))).containsExactly(-32600);
    assertThat(unnamed(between(RawClient.framed("\"" + padding(size) + "\""))))
        .containsExactly(-32600);
    int half = Math.max(300, size / 2);
    assertThat(unnamed(between(RawClient.framed("[".repeat(half) + "]".repeat(half)))))
        .containsExactly(-32600);
  }

  @ParameterizedTest
  @ValueSource(ints = {10, 9 << 10, 1 << 20, 10 << 20})
  void deepNestingIsAnErrorOfThatRequest(int size) {
    int half = Math.max(300, size / 2);
    String deep = "[".repeat(half) + "]".repeat(half);
    RawClient.Ended ended = between(RawClient.framed(request("7", "textDocument/hover", deep)));
    assertThat(ended.error(7)).isEqualTo(-32600);
    assertThat(unnamed(between(RawClient.framed("[".repeat(half))))).containsExactly(-32700);
  }

  @ParameterizedTest
  @ValueSource(ints = {10, 9 << 10, 1 << 20, 10 << 20})
  void aBigIdIsGivenBackOrRefused(int size) {
    RawClient.Ended ended =
        between(
            RawClient.framed(request("\"" + padding(size) + "\"", "textDocument/makeTea", "{}")));
    JsonElement echoed =
        ended.messages().stream()
            .filter(m -> m.has("error"))
            .map(m -> m.get("id"))
            .findFirst()
            .orElseThrow();
    assertThat(echoed.getAsString()).hasSize(size);
    String digits = "9".repeat(size + 10);
    assertThat(unnamed(between(RawClient.framed(request(digits, "shutdown", "{}")))))
        .hasSize(1)
        .allMatch(code -> code == -32600 || code == -32700);
  }

  @ParameterizedTest
  @ValueSource(ints = {10, 9 << 10, 1 << 20, 10 << 20})
  void aLengthThatIsTooShortOrTooLongCostsThatMessageAlone(int size) {
    String body = request("7", "textDocument/hover", "{\"a\":\"" + padding(size) + "\"}");
    for (int length : new int[] {0, 1, body.length() / 2, body.length() - 1}) {
      assertThat(unnamed(between("Content-Length: " + length + "\r\n\r\n" + body)))
          .as("%s of %s", length, body.length())
          .containsExactly(-32700);
    }
    // The hover request lies in the bytes that are taken for this one.
    RawClient.Ended ended = between("Content-Length: " + (body.length() + 9) + "\r\n\r\n" + body);
    assertThat(unnamed(ended)).containsExactly(-32700);
  }

  @ParameterizedTest
  @ValueSource(ints = {10, 9 << 10, 1 << 20, 10 << 20})
  void headersAreReadAsTheyMayBeWritten(int size) {
    String body =
        request(
            "7",
            "textDocument/hover",
            "{\"pad\":\""
                + padding(size)
                + "\",\"textDocument\":{\"uri\":\"file:///none/a.tabor\"},"
                + "\"position\":{\"line\":0,\"character\":8}}");
    for (String head :
        List.of(
            "content-length: %d\r\n\r\n",
            "CONTENT-LENGTH:%d\r\n\r\n",
            "Content-Type: application/vscode-jsonrpc; charset=utf8\r\nContent-Length: %d\r\n\r\n",
            "Content-Length: %d\r\nContent-Type: x; charset=\"UTF-8\"\r\nX-Other: 1\r\n\r\n",
            "\r\nContent-Length: %d\n\n")) {
      RawClient.Ended ended = between(head.formatted(body.length()) + body);
      assertThat(ended.answer(7).has("result")).as(head).isTrue();
      assertThat(unnamed(ended)).as(head).isEmpty();
    }
    String unknown = "Content-Type: x; charset=klingon\r\nContent-Length: %d\r\n\r\n";
    RawClient.Ended ended = between(unknown.formatted(body.length()) + body);
    assertThat(unnamed(ended)).containsExactly(-32700);
    assertThat(words(ended)).contains("charset klingon");
    for (String none : List.of("Content-Length: many\r\n\r\n", "Content-Type: x\r\n\r\n", "")) {
      assertThat(unnamed(between(none + body + "\r\n"))).as(none).containsExactly(-32700);
    }
    assertThat(unnamed(between("Content-Length: 99999999999999999999\r\n\r\n" + body)))
        .containsExactly(-32700);
  }

  private static String words(RawClient.Ended ended) {
    return ended.messages().stream()
        .filter(m -> m.has("error"))
        .map(JsonObject::toString)
        .reduce("", String::concat);
  }
}
