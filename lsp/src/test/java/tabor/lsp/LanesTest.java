package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.jsonrpc.Endpoint;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import tabor.lsp.Scheduler.Lane;
import tabor.lsp.Scheduler.Rank;

/** What runs beside what, what goes first, and what is given up. */
class LanesTest {
  private static final String URI = "file:///none/a.tabor";

  private final Session session = new Session(Log.NONE, "test", () -> {});
  private final Scheduler scheduler = session.scheduler();
  private final CountDownLatch release = new CountDownLatch(1);

  @AfterEach
  void end() {
    release.countDown();
    scheduler.close(Duration.ofMinutes(1));
  }

  /** Keeps a lane busy until {@link #release} is let go. */
  private void occupy(Lane lane) throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    CompletableFuture<Object> unused =
        scheduler.submit(
            lane,
            wanted -> {
              begun.countDown();
              return await(release);
            });
    assertThat(begun.await(30, TimeUnit.SECONDS)).isTrue();
  }

  private static Object await(CountDownLatch latch) {
    try {
      return latch.await(60, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void workThatIsCancelledStops() throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    CompletableFuture<Throwable> stopped = new CompletableFuture<>();
    CompletableFuture<Object> answer =
        scheduler.submit(
            Lane.FIXING,
            wanted -> {
              begun.countDown();
              long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(30);
              try {
                while (System.nanoTime() < end) {
                  wanted.check();
                }
              } catch (RuntimeException e) {
                stopped.complete(e);
                throw e;
              }
              return stopped.complete(new AssertionError("it went on"));
            });
    assertThat(begun.await(30, TimeUnit.SECONDS)).isTrue();
    answer.cancel(true);
    assertThat(stopped.get(60, TimeUnit.SECONDS))
        .isInstanceOf(java.util.concurrent.CancellationException.class);
  }

  @Test
  void whatIsCancelledWhileItWaitsIsNeverBegun() throws Exception {
    occupy(Lane.READING);
    List<String> ran = new CopyOnWriteArrayList<>();
    CompletableFuture<Object> first = scheduler.submit(Lane.READING, wanted -> ran.add("first"));
    CompletableFuture<Object> second = scheduler.submit(Lane.READING, wanted -> ran.add("second"));
    first.cancel(true);
    release.countDown();
    second.get(30, TimeUnit.SECONDS);
    assertThat(ran).containsExactly("second");
  }

  @Test
  void theChangedFileGoesFirstAndThoseThatRestOnItLast() throws Exception {
    occupy(Lane.TYPING);
    List<String> ran = new CopyOnWriteArrayList<>();
    CountDownLatch all = new CountDownLatch(3);
    scheduler.later(
        Rank.DEPENDENTS,
        () -> {
          ran.add("dependents");
          all.countDown();
        });
    CompletableFuture<Object> unused =
        scheduler.submit(
            Lane.TYPING,
            wanted -> {
              all.countDown();
              return ran.add("answer");
            });
    scheduler.later(
        Rank.CHECK,
        () -> {
          ran.add("check");
          all.countDown();
        });
    release.countDown();
    assertThat(all.await(30, TimeUnit.SECONDS)).isTrue();
    assertThat(ran).containsExactly("check", "answer", "dependents");
  }

  /** While everything heavier is busy, what is asked at every key is answered. */
  @Test
  void eachRequestIsAnsweredInItsOwnLane() throws Exception {
    session
        .documents()
        .open(new TextDocumentItem(URI, "tabor", 1, "groove a\n  snare : x . x .\n"));
    TextDocumentIdentifier file = new TextDocumentIdentifier(URI);
    Position place = new Position(1, 2);
    occupy(Lane.BUILDING);
    occupy(Lane.FIXING);
    ask("textDocument/hover", new HoverParams(file, place));
    ask("textDocument/documentSymbol", new DocumentSymbolParams(file));
    ask("textDocument/semanticTokens/full", new SemanticTokensParams(file));
    occupy(Lane.READING);
    ask("textDocument/completion", new CompletionParams(file, place));
  }

  private void ask(String method, Object params) throws Exception {
    assertThat(session.requests().request(method, params).get(30, TimeUnit.SECONDS)).isNotNull();
  }

  /** What is tried out on a text is worthless once that has changed; what only reads goes on. */
  @Test
  void anEditBreaksOffWhatTriesOutFixes() throws Exception {
    OpenDocument document =
        session.documents().open(new TextDocumentItem(URI, "tabor", 1, "groove a\n"));
    Map<Lane, CompletableFuture<Object>> answers = new EnumMap<>(Lane.class);
    for (Lane lane : List.of(Lane.READING, Lane.FIXING)) {
      answers.put(lane, session.requests().inFile(lane, document, file -> await(release)));
    }
    SessionDriver.change(session, URI, "groove b\n");
    assertThatThrownBy(() -> answers.get(Lane.FIXING).get(30, TimeUnit.SECONDS))
        .hasMessageContaining("changed meanwhile");
    release.countDown();
    assertThat(answers.get(Lane.READING).get(30, TimeUnit.SECONDS)).isEqualTo(true);
  }

  /** A file that is looked at for another's sake just when it changes is answered all the same. */
  @Test
  void aVersionMetWhileDependentsAreCheckedIsAnswered() throws Exception {
    List<String> published = new CopyOnWriteArrayList<>();
    session.connect(
        new Client(
            new Endpoint() {
              @Override
              public CompletableFuture<?> request(String method, Object parameter) {
                return new CompletableFuture<>();
              }

              @Override
              public void notify(String method, Object parameter) {
                published.add(parameter.toString());
              }
            }));
    String b = "file:///none/b.tabor";
    String using = "use \"a.tabor\"\ngroove b\n  snare : x . x .\n";
    opened(URI, "groove a\n  snare : x . x .\n");
    opened(b, using);
    idle();
    occupy(Lane.TYPING);
    changed(URI, "groove a\n  kick : x . x .\n");
    // The next change of b has been taken in; its check comes after that of the dependents.
    Runnable check = changedUnchecked(b, using + "# again\n");
    release.countDown();
    idle();
    check.run();
    idle();
    assertThat(published)
        .filteredOn(p -> p.contains("b.tabor") && p.contains("\"version\":2"))
        .hasSize(1);
  }

  private void opened(String uri, String text) {
    session
        .requests()
        .notify(
            "textDocument/didOpen",
            new DidOpenTextDocumentParams(new TextDocumentItem(uri, "tabor", 1, text)));
  }

  private void changed(String uri, String text) {
    changedUnchecked(uri, text).run();
  }

  private Runnable changedUnchecked(String uri, String text) {
    OpenDocument document =
        session
            .documents()
            .change(
                new VersionedTextDocumentIdentifier(uri, 2),
                List.of(new TextDocumentContentChangeEvent(text)),
                PositionEncoding.UTF_16)
            .orElseThrow();
    return () -> session.diagnostics().touched(document.path());
  }

  /** Waits until nothing is left to check. */
  private void idle() throws Exception {
    for (int i = 0; i < 2; i++) { // the first may find dependents yet to come
      CountDownLatch done = new CountDownLatch(1);
      scheduler.later(Rank.DEPENDENTS, done::countDown);
      assertThat(done.await(30, TimeUnit.SECONDS)).isTrue();
    }
  }
}
