package tabor.lsp;

import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;

/**
 * The one thread that compiles and answers, so that nothing it keeps needs a lock. The thread that
 * reads messages stays free: it takes in further edits and cancellations meanwhile.
 */
final class Worker {
  private final ThreadPoolExecutor executor =
      new ThreadPoolExecutor(
          1,
          1,
          0,
          TimeUnit.SECONDS,
          new LinkedBlockingQueue<>(),
          task -> {
            // Deeply nested texts are read by recursion: a stack of our own size.
            Thread thread = new Thread(null, task, "tabor-worker", 4L << 20);
            thread.setDaemon(true);
            return thread;
          });

  /** Asks whether the answer is still wanted. */
  interface Wanted {
    /** Throws {@link CancellationException} if the request was cancelled. */
    void check();
  }

  /** Runs a task after those already waiting. The future fails with what the task throws. */
  <R> CompletableFuture<R> submit(Function<Wanted, R> task) {
    CompletableFuture<R> future = new CompletableFuture<>();
    executor.execute(
        () -> {
          try {
            Wanted wanted =
                () -> {
                  if (future.isCancelled()) {
                    throw new CancellationException();
                  }
                };
            wanted.check();
            future.complete(task.apply(wanted));
          } catch (Throwable e) { // a request that fails must not take the server with it
            future.completeExceptionally(e);
          }
        });
    return future;
  }

  /** True if something waits to be done. */
  boolean isBusy() {
    return !executor.getQueue().isEmpty();
  }

  /** Takes no more tasks, and waits a moment for those that were taken. */
  void close() {
    executor.shutdown();
    try {
      if (!executor.awaitTermination(2, TimeUnit.SECONDS)) {
        executor.shutdownNow();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
