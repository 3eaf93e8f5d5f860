package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonParser;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.ProgressParams;
import org.eclipse.lsp4j.WorkDoneProgressBegin;
import org.eclipse.lsp4j.WorkDoneProgressEnd;
import org.eclipse.lsp4j.WorkDoneProgressReport;
import org.eclipse.lsp4j.jsonrpc.Endpoint;
import org.junit.jupiter.api.Test;

/** What a client is told of work that takes long, and when. */
class RunningWorkTest {
  private final List<Class<?>> told = new ArrayList<>();
  private final CompletableFuture<Object> agreed = new CompletableFuture<>();
  private final Session session = new Session(Log.NONE, "test", () -> {});
  private final CompletableFuture<Object> work = new CompletableFuture<>();

  private RunningWork.Progress begin() {
    session.initialize(
        JsonParser.parseString("{\"capabilities\":{\"window\":{\"workDoneProgress\":true}}}")
            .getAsJsonObject());
    session.connect(
        new Client(
            new Endpoint() {
              @Override
              public CompletableFuture<?> request(String method, Object parameter) {
                return agreed;
              }

              @Override
              public void notify(String method, Object parameter) {
                told.add(((ProgressParams) parameter).getValue().getLeft().getClass());
              }
            }));
    return session.work().begin(session, null, work, "Building");
  }

  @Test
  void nothingIsToldBeforeTheClientHasAgreed() {
    RunningWork.Progress progress = begin();
    progress.report("one", 10);
    assertThat(told).isEmpty();
    agreed.complete(null);
    progress.report("two", 20);
    work.complete("done");
    progress.end("again");
    assertThat(told)
        .containsExactly(
            WorkDoneProgressBegin.class, WorkDoneProgressReport.class, WorkDoneProgressEnd.class);
  }

  @Test
  void workThatIsDoneBeforeTheClientAgreesIsNotToldAtAll() {
    begin();
    work.complete("done");
    agreed.complete(null);
    assertThat(told).isEmpty();
  }
}
