package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What the first look at a file must not wait for, in a process of its own. */
@Timeout(120)
class FirstOpeningTest {
  private static final String PROBLEMS =
      """
      tempo 1000
      groove beat "A beat"
        hands : rlrl rlrl rlrl rlrl |
        kick : x x x
      step up
        accent left at 2e
        righ plays ride
        drop kick at 2
        add kick at 2 2
      groove fast
        tempo 400
        right : {ssss} {ssss} ssss ssss
        hands : rr
      """;

  /**
   * Comparators put together from parts are made by the JVM when first used, which takes longer
   * than all the reading of a short file. Those on this path are written out.
   */
  @Test
  void theFirstDiagnosticsMakeNoClasses(@TempDir Path folder)
      throws IOException, InterruptedException {
    List<Path> examples;
    try (Stream<Path> all =
        Files.list(Path.of(System.getProperty("basedir", ".")).resolve("../examples"))) {
      examples = all.filter(file -> file.toString().endsWith(".tabor")).sorted().toList();
    }
    StringBuilder messages = new StringBuilder(RawClient.framed(RawClient.INITIALIZE));
    messages.append(open(folder.resolve("problems.tabor"), PROBLEMS, 2));
    for (int i = 0; i < examples.size(); i++) {
      Path file = examples.get(i).toAbsolutePath().normalize();
      messages.append(open(file, Files.readString(file), 3 + i));
    }
    messages.append(RawClient.framed(RawClient.SHUTDOWN)).append(RawClient.framed(RawClient.EXIT));
    Path in = Files.writeString(folder.resolve("in"), messages);
    Path out = folder.resolve("out");
    Path loaded = folder.resolve("loaded");
    Process server =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xlog:class+load:file=" + loaded,
                "-cp",
                System.getProperty("java.class.path"),
                Answering.class.getName())
            .redirectInput(in.toFile())
            .redirectOutput(out.toFile())
            .redirectError(folder.resolve("err").toFile())
            .start();
    assertThat(server.waitFor()).isZero();
    List<JsonObject> answers = RawClient.messages(Files.readString(out, StandardCharsets.UTF_8));
    assertThat(answers.stream().filter(answer -> answer.toString().contains("\"items\":[{")))
        .as("answers with diagnostics")
        .isNotEmpty();
    assertThat(Files.readString(loaded))
        .contains("tabor.body.PaceChecks ", "tabor.parse.LineSimulation ")
        .doesNotContain("java.util.Comparator$$Lambda");
  }

  /** A server as a process of its own that answers whatever it was asked, also after the end. */
  static final class Answering {
    private Answering() {}

    public static void main(String[] args) {
      System.exit(Connection.serve(System.in, System.out, Log.NONE, "test"));
    }
  }

  private static String open(Path file, String text, int id) {
    JsonPrimitive uri = new JsonPrimitive(file.toUri().toString());
    return RawClient.framed(
            """
            {"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":\
            {"uri":%s,"languageId":"tabor","version":1,"text":%s}}}\
            """
                .formatted(uri, new JsonPrimitive(text)))
        + RawClient.framed(
            """
            {"jsonrpc":"2.0","id":%d,"method":"textDocument/diagnostic","params":\
            {"textDocument":{"uri":%s}}}\
            """
                .formatted(id, uri));
  }
}
