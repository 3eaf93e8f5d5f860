package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Raw bytes in, raw bytes out: what a session may be asked when, and what it survives. */
class LifeTest {
  @Test
  void aProperSessionEndsWithZero() {
    RawClient.Ended ended =
        RawClient.run(
            RawClient.framed(RawClient.INITIALIZE),
            RawClient.framed(RawClient.SHUTDOWN),
            RawClient.framed(RawClient.EXIT));
    assertThat(ended.code()).isZero();
    assertThat(ended.answer(1).getAsJsonObject("result").has("capabilities")).isTrue();
    assertThat(ended.answer(99).has("error")).isFalse();
  }

  @Test
  void leavingWithoutShutdownEndsWithOne() {
    assertThat(
            RawClient.run(RawClient.framed(RawClient.INITIALIZE), RawClient.framed(RawClient.EXIT))
                .code())
        .isEqualTo(1);
    assertThat(RawClient.run(RawClient.framed(RawClient.INITIALIZE)).code()).isEqualTo(1);
    assertThat(RawClient.run("").code()).isEqualTo(1);
  }

  @Test
  void nothingIsAnsweredBeforeInitializeOrAfterShutdown() {
    String hover =
        "{\"jsonrpc\":\"2.0\",\"id\":%d,\"method\":\"textDocument/hover\",\"params\":%s}";
    String params =
        "{\"textDocument\":{\"uri\":\"file:///a\"},\"position\":{\"line\":0,\"character\":0}}";
    RawClient.Ended ended =
        RawClient.run(
            RawClient.framed(hover.formatted(5, params)),
            RawClient.framed(RawClient.INITIALIZE),
            RawClient.framed(RawClient.INITIALIZE.replace("\"id\":1", "\"id\":2")),
            RawClient.framed(RawClient.SHUTDOWN),
            RawClient.framed(hover.formatted(6, params)),
            RawClient.framed(RawClient.EXIT));
    assertThat(ended.error(5)).isEqualTo(-32002);
    assertThat(ended.error(2)).isEqualTo(-32600);
    assertThat(ended.error(6)).isEqualTo(-32600);
  }

  @Test
  void unknownMethodsAndMissingParametersAreErrorsOfThatRequest() {
    RawClient.Ended ended =
        RawClient.run(
            RawClient.framed(RawClient.INITIALIZE),
            RawClient.framed(
                "{\"jsonrpc\":\"2.0\",\"id\":7,\"method\":\"textDocument/makeTea\",\"params\":{}}"),
            RawClient.framed("{\"jsonrpc\":\"2.0\",\"method\":\"$/whatever\",\"params\":[1]}"),
            RawClient.framed(
                "{\"jsonrpc\":\"2.0\",\"id\":8,\"method\":\"textDocument/diagnostic\"}"),
            RawClient.framed(RawClient.SHUTDOWN),
            RawClient.framed(RawClient.EXIT));
    assertThat(ended.error(7)).isEqualTo(-32601);
    assertThat(ended.error(8)).isEqualTo(-32602);
    assertThat(ended.code()).isZero();
  }

  @Test
  void whatIsNoMessageIsSurvived() {
    RawClient.Ended ended =
        RawClient.run(
            RawClient.framed(RawClient.INITIALIZE),
            RawClient.framed("{\"jsonrpc\":\"2.0\",\"id\":"),
            RawClient.framed("[1,2"),
            RawClient.framed("true"),
            RawClient.framed(
                "{\"jsonrpc\":\"2.0\",\"id\":3,\"method\":\"textDocument/didOpen\",\"params\":17}"),
            RawClient.framed(
                "{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didOpen\",\"params\":{}}"),
            RawClient.framed(
                "{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didChange\",\"params\":null}"),
            RawClient.framed("{\"jsonrpc\":\"2.0\",\"id\":123,\"result\":null}"),
            "Content-Length: x\r\n\r\n",
            "Nonsense\r\n\r\n",
            RawClient.framed(RawClient.SHUTDOWN),
            RawClient.framed(RawClient.EXIT));
    assertThat(ended.code()).isZero();
    assertThat(ended.answer(99).has("error")).isFalse();
  }
}
