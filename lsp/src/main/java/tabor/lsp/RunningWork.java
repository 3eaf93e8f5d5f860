package tabor.lsp;

import java.io.IOException;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.ReentrantLock;
import org.eclipse.lsp4j.WorkDoneProgressBegin;
import org.eclipse.lsp4j.WorkDoneProgressCancelParams;
import org.eclipse.lsp4j.WorkDoneProgressEnd;
import org.eclipse.lsp4j.WorkDoneProgressReport;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.jspecify.annotations.Nullable;

/** Long work of which the client is told how far it has come, and which it can stop. */
final class RunningWork {
  private final Map<Object, CompletableFuture<?>> running = new ConcurrentHashMap<>();
  private final AtomicInteger number = new AtomicInteger();
  private final ReentrantLock writing = new ReentrantLock();
  private boolean ended;

  void declare(Requests requests) {
    requests.told(
        "window/workDoneProgress/cancel",
        WorkDoneProgressCancelParams.class,
        params -> cancel(params.getToken()),
        "token");
  }

  private void cancel(Either<String, Integer> token) {
    CompletableFuture<?> work = running.remove(token.get());
    if (work != null) {
      work.cancel(true);
    }
  }

  /** Writes a file. */
  interface Write {
    void run() throws IOException;
  }

  /**
   * Writes a file as a whole: the server ends before or after, never while it is written.
   *
   * @throws CancellationException if the server has ended
   */
  void write(Write file) throws IOException {
    writing.lock();
    try {
      if (ended) {
        throw new CancellationException();
      }
      file.run();
    } finally {
      writing.unlock();
    }
  }

  /**
   * Lets the file that is being written be finished, and none be begun.
   *
   * @param patience how long that file may take
   */
  void writeNoMore(Duration patience) {
    try {
      if (writing.tryLock(patience.toNanos(), TimeUnit.NANOSECONDS)) {
        try {
          ended = true;
        } finally {
          writing.unlock();
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Stops everything. */
  void cancelAll() {
    running.values().forEach(work -> work.cancel(true));
    running.clear();
  }

  /**
   * Begins to tell of some work: under the client's own token, or under one of ours once the client
   * has agreed to it.
   *
   * @param work what a cancelled progress cancels; progress ends when it is done
   */
  Progress begin(
      Session session,
      @Nullable Either<String, Integer> given,
      CompletableFuture<?> work,
      String title) {
    Progress progress = new Progress(session.client(), title);
    Either<String, Integer> token = given;
    if (token != null) {
      progress.begin(token);
    } else if (session.capabilities().has("window", "workDoneProgress")) {
      Either<String, Integer> ours = Either.forLeft("tabor-" + number.incrementAndGet());
      token = ours;
      CompletableFuture<?> unused =
          session
              .client()
              .createProgress(ours.getLeft())
              .thenRun(() -> progress.begin(ours)); // a client that refuses is told nothing
    }
    Object key = token == null ? progress : token.get();
    running.put(key, work);
    CompletableFuture<?> unused =
        work.whenComplete(
            (result, problem) -> {
              running.remove(key);
              progress.end(problem == null ? "done" : "stopped");
            });
    return progress;
  }

  /** One piece of work, as far as it has come. */
  static final class Progress {
    private final Client client;
    private final String title;
    private @Nullable Either<String, Integer> token;
    private boolean ended;

    private Progress(Client client, String title) {
      this.client = client;
      this.title = title;
    }

    private synchronized void begin(Either<String, Integer> agreed) {
      if (ended) {
        return; // done before the client agreed: there is nothing to tell any more
      }
      token = agreed;
      WorkDoneProgressBegin begin = new WorkDoneProgressBegin();
      begin.setTitle(title);
      begin.setCancellable(true);
      begin.setPercentage(0);
      client.progress(agreed, begin);
    }

    /** Says what is being done. */
    synchronized void report(String message, int percent) {
      if (token != null && !ended) {
        WorkDoneProgressReport report = new WorkDoneProgressReport();
        report.setMessage(message);
        report.setPercentage(percent);
        client.progress(token, report);
      }
    }

    /** Ends; a second time does nothing. */
    synchronized void end(String message) {
      if (token != null && !ended) {
        WorkDoneProgressEnd end = new WorkDoneProgressEnd();
        end.setMessage(message);
        client.progress(token, end);
      }
      ended = true;
    }
  }
}
