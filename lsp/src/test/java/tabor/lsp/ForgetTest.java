package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import tabor.lsp.Scheduler.Lane;
import tabor.lsp.Scheduler.Rank;

/** What was worked out for a file is let go when it is closed, in whichever lane that was. */
class ForgetTest {
  private static final String TEXT = "groove a\n  kick : x . x .\n";

  private final Session session = new Session(Log.NONE, "test", () -> {});

  @AfterEach
  void end() {
    session.close(Duration.ofMinutes(1));
  }

  private Path open(String uri) {
    SessionDriver.open(session, uri, TEXT);
    return session.requests().document(uri).path();
  }

  private boolean in(Lane lane, Predicate<LaneLibrary> task) throws Exception {
    return session
        .scheduler()
        .submit(lane, wanted -> task.test(session.library(lane).serving(wanted)))
        .get(60, TimeUnit.SECONDS);
  }

  private static boolean sound(LaneLibrary library, Path path) {
    return !library.trial(path, TEXT + "  snare : . x . x\n").hasErrors();
  }

  /** Waits until the typing lane has nothing left to do, nor any lane of what that gave it. */
  private void rest() throws Exception {
    CompletableFuture<String> typed = new CompletableFuture<>();
    session.scheduler().later(Rank.DEPENDENTS, () -> typed.complete("over"));
    assertThat(typed.get(60, TimeUnit.SECONDS)).isEqualTo("over");
    for (Lane lane : Lane.values()) {
      CompletableFuture<String> over = new CompletableFuture<>();
      session.scheduler().ahead(lane, () -> over.complete("over"));
      assertThat(over.get(60, TimeUnit.SECONDS)).isEqualTo("over");
    }
  }

  @Test
  void aClosedFileIsForgottenInEveryLaneAndAnOpenOneKept() throws Exception {
    SessionDriver.connect(session, "{}");
    Path closed = open("file:///none/closed.tabor");
    Path kept = open("file:///none/kept.tabor");
    Path between = open("file:///none/between.tabor");
    for (Lane lane : Lane.values()) {
      for (Path path : List.of(closed, kept, between)) {
        assertThat(in(lane, library -> sound(library, path))).isTrue();
        assertThat(in(lane, library -> library.keeps(path))).as("%s", lane).isTrue();
      }
    }
    SessionDriver.close(session, "file:///none/closed.tabor");
    SessionDriver.close(session, "file:///none/between.tabor");
    open("file:///none/between.tabor");
    rest();
    for (Lane lane : Lane.values()) {
      assertThat(in(lane, library -> library.keeps(closed))).as("%s", lane).isFalse();
      assertThat(in(lane, library -> library.keeps(kept))).as("%s", lane).isTrue();
    }
    assertThat(in(Lane.READING, library -> sound(library, between))).isTrue();
  }
}
