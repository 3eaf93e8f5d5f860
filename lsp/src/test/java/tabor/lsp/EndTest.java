package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tabor.lsp.Scheduler.Lane;

/** A client that leaves: what it has begun holds nobody up, and leaves nothing half done. */
@Timeout(120)
class EndTest {
  private static final Duration PATIENT = Duration.ofMinutes(1);

  /** Nothing else would end it sooner than after ten seconds. */
  @ParameterizedTest
  @ValueSource(strings = {"shutdown and exit", "exit", "closed"})
  void theProcessEndsThoughWhatItDoesNeverEnds(String way) throws Exception {
    Process server =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                StuckServer.class.getName())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    try {
      OutputStream in = server.getOutputStream();
      send(in, RawClient.INITIALIZE);
      assertThat(server.getInputStream().read()).isEqualTo('C');
      if (way.startsWith("shutdown")) {
        send(in, RawClient.SHUTDOWN);
      }
      if (way.endsWith("exit")) {
        send(in, RawClient.EXIT);
      } else {
        in.close();
      }
      assertThat(server.waitFor(8, TimeUnit.SECONDS)).isTrue();
      assertThat(server.exitValue()).isEqualTo(way.startsWith("shutdown") ? 0 : 1);
    } finally {
      server.destroyForcibly();
    }
  }

  private static void send(OutputStream in, String message) throws IOException {
    in.write(RawClient.framed(message).getBytes(StandardCharsets.UTF_8));
    in.flush();
  }

  @Test
  void whatEndsSoonIsWaitedForHoweverMuchThereIs() {
    Scheduler scheduler = new Scheduler(Log.NONE);
    List<CompletableFuture<String>> asked = new ArrayList<>();
    for (int i = 0; i < 300; i++) {
      Lane lane = Lane.values()[i % Lane.values().length];
      asked.add(scheduler.submit(lane, wanted -> "answered"));
    }
    assertThat(scheduler.close(PATIENT)).isTrue();
    assertThat(asked).allSatisfy(one -> assertThat(one.getNow("")).isEqualTo("answered"));
  }

  @Test
  void whatDoesNotEndIsLeft() throws Exception {
    Scheduler scheduler = new Scheduler(Log.NONE);
    CountDownLatch begun = new CountDownLatch(1);
    CompletableFuture<String> never = new CompletableFuture<>();
    CompletableFuture<String> asked =
        scheduler.submit(
            Lane.READING,
            wanted -> {
              begun.countDown();
              return never.join();
            });
    begun.await();
    assertThat(scheduler.close(Duration.ZERO)).isFalse();
    assertThat(asked).isNotDone();
    never.complete("at last");
  }

  /** Closing lets it come to its end, and nothing is written after that. */
  @Test
  void aFileThatIsBeingWrittenIsWrittenWhole() throws Exception {
    RunningWork work = new RunningWork();
    CountDownLatch begun = new CountDownLatch(1);
    List<String> order = new ArrayList<>();
    Thread closing = Thread.currentThread();
    Thread writer =
        new Thread(
            () -> {
              try {
                work.write(
                    () -> {
                      begun.countDown();
                      while (closing.getState() != Thread.State.TIMED_WAITING) {
                        Thread.onSpinWait();
                      }
                      order.add("written");
                    });
              } catch (IOException e) {
                throw new AssertionError(e);
              }
            });
    writer.start();
    begun.await();
    work.writeNoMore(PATIENT);
    order.add("closed");
    writer.join();
    assertThat(order).containsExactly("written", "closed");
    assertThatThrownBy(() -> work.write(() -> order.add("late")))
        .isInstanceOf(CancellationException.class);
    assertThat(order).hasSize(2);
  }
}
