package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.gson.JsonPrimitive;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.eclipse.lsp4j.ExecuteCommandParams;
import org.eclipse.lsp4j.ProgressParams;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.WorkDoneProgressCancelParams;
import org.eclipse.lsp4j.WorkDoneProgressEnd;
import org.eclipse.lsp4j.WorkDoneProgressReport;
import org.eclipse.lsp4j.jsonrpc.Endpoint;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tabor.lsp.Scheduler.Lane;

/** Where a build runs, and that one which is stopped stops. */
class BuildLaneTest {
  private static final String TOKEN = "mine";

  @TempDir private Path folder;
  private final Session session = new Session(Log.NONE, "test", () -> {});
  private final List<String> threads = new CopyOnWriteArrayList<>();
  private final List<String> messages = new CopyOnWriteArrayList<>();

  /** What the client does when it is told of a file, in the very thread that builds. */
  private Runnable whenTold = () -> {};

  /** A client that is told everything in the thread that tells. */
  private final class Listening implements Endpoint {
    @Override
    public CompletableFuture<?> request(String method, Object parameter) {
      return CompletableFuture.completedFuture(null);
    }

    @Override
    public void notify(String method, Object parameter) {
      if (parameter instanceof ProgressParams progress) {
        Object value = progress.getValue().getLeft();
        if (value instanceof WorkDoneProgressReport report) {
          threads.add(Thread.currentThread().getName());
          messages.add(report.getMessage());
          whenTold.run();
        } else if (value instanceof WorkDoneProgressEnd end) {
          messages.add(end.getMessage());
        }
      }
    }
  }

  @BeforeEach
  void open() {
    session.connect(new Client(new Listening()));
    String text = "groove a\n  kick : x . x .\ngroove b\n  kick : x . . .\n";
    session.documents().open(new TextDocumentItem(uri(), "tabor", 1, text));
  }

  @AfterEach
  void close() {
    session.scheduler().close(Duration.ofMinutes(1));
  }

  private String uri() {
    return folder.resolve("a.tabor").toUri().toString();
  }

  private CompletableFuture<?> build() {
    ExecuteCommandParams params =
        new ExecuteCommandParams("tabor.build", List.of(new JsonPrimitive(uri())));
    params.setWorkDoneToken(Either.forLeft(TOKEN));
    return session.requests().request("workspace/executeCommand", params);
  }

  /** Waits until whatever a lane has begun is over. */
  private void pass(Lane lane) throws Exception {
    assertThat(session.scheduler().submit(lane, wanted -> "over").get(60, TimeUnit.SECONDS))
        .isEqualTo("over");
  }

  private List<String> built() throws Exception {
    try (Stream<Path> files = Files.list(folder.resolve("out"))) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void filesAreMadeInTheirOwnLane() throws Exception {
    build().get(60, TimeUnit.SECONDS);
    assertThat(messages).hasSizeGreaterThan(2).last().isEqualTo("done");
    assertThat(threads).containsOnly("tabor-building");
    assertThat(built()).containsAll(messages.subList(0, messages.size() - 1));
  }

  /** Stopped while the first file is made, it is the only one: it is whole, and no other begun. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void whatIsStoppedStopsAfterTheFileThatIsBeingMade(boolean byProgress) throws Exception {
    CompletableFuture<CompletableFuture<?>> asked = new CompletableFuture<>();
    whenTold =
        () -> {
          if (byProgress) {
            session
                .requests()
                .notify(
                    "window/workDoneProgress/cancel",
                    new WorkDoneProgressCancelParams(Either.forLeft(TOKEN)));
          } else {
            asked.join().cancel(true);
          }
        };
    CompletableFuture<?> answer = build();
    asked.complete(answer);
    assertThatThrownBy(() -> answer.get(60, TimeUnit.SECONDS))
        .isInstanceOf(CancellationException.class);
    pass(Lane.TYPING);
    pass(Lane.BUILDING);
    assertThat(messages).hasSize(2).last().isEqualTo("stopped");
    assertThat(built()).containsExactly(messages.get(0));
  }
}
