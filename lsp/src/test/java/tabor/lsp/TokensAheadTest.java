package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import tabor.lsp.Scheduler.Lane;

/** Tokens that are worked out before an editor asks for them, and never in anyone's way. */
class TokensAheadTest {
  private static final String URI = "file:///none/long.tabor";
  private static final int SECTIONS = 250;
  private static final String COLOURS = "{\"textDocument\":{\"semanticTokens\":{}}}";

  private final Session session = new Session(Log.NONE, "test", () -> {});
  private final CompletableFuture<String> reading = new CompletableFuture<>();

  @AfterEach
  void close() {
    reading.complete("over");
    session.scheduler().close(Duration.ofMinutes(1));
  }

  /** Opens a long file while the reading lane is busy. */
  private void open(String capabilities) throws Exception {
    SessionDriver.connect(session, capabilities);
    CompletableFuture<String> busy =
        session.scheduler().submit(Lane.READING, wanted -> reading.join());
    assertThat(busy).isNotDone();
    StringBuilder text = new StringBuilder("time 4/4\n");
    for (int i = 1; i < SECTIONS; i++) {
      text.append("groove g").append(i).append("\n  kick : x . x .\n");
    }
    SessionDriver.open(session, URI, text.toString());
    pass(Lane.TYPING);
  }

  private void pass(Lane lane) throws Exception {
    assertThat(session.scheduler().submit(lane, wanted -> "over").get(60, TimeUnit.SECONDS))
        .isEqualTo("over");
  }

  /** Lets the reading lane go on, until all that it had to do in turns is done. */
  private void readOn() throws Exception {
    reading.complete("over");
    for (int turn = 0; turn < SECTIONS; turn++) {
      pass(Lane.READING);
    }
  }

  @Test
  void aFileThatWasOpenedIsWorkedOutAsAWhole() throws Exception {
    open(COLOURS);
    readOn();
    assertThat(session.tokens().known()).isEqualTo(SECTIONS);
  }

  @Test
  void whatIsAskedMeanwhileComesFirst() throws Exception {
    open(COLOURS);
    CompletableFuture<Integer> asked =
        session.scheduler().submit(Lane.READING, wanted -> session.tokens().known());
    readOn();
    assertThat(asked.get(60, TimeUnit.SECONDS)).isPositive().isLessThan(SECTIONS);
  }

  @Test
  void anEditEndsIt() throws Exception {
    open(COLOURS);
    SessionDriver.change(session, URI, "groove other\n");
    readOn();
    assertThat(session.tokens().known()).isZero();
  }

  @Test
  void aClientThatNeverAsksGetsNone() throws Exception {
    open("{}");
    readOn();
    assertThat(session.tokens().known()).isZero();
  }
}
