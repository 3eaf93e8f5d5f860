package tabor.lsp;

import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.BooleanSupplier;
import java.util.function.Function;

/**
 * Does one thing after another, so that nothing that is kept between them needs a lock. Mostly on a
 * thread of its own: the one that reads messages stays free to take in further edits and
 * cancellations. Only where nothing waits on either side does the reading thread do a thing itself,
 * which saves a keystroke the time that waking a thread takes.
 */
final class Worker {
  /** For texts and groups that are read by recursion. */
  static final long STACK_BYTES = 4L << 20;

  private final ThreadPoolExecutor executor =
      new ThreadPoolExecutor(
          1,
          1,
          0,
          TimeUnit.SECONDS,
          new LinkedBlockingQueue<>(),
          task -> {
            Thread thread = new Thread(null, task, "tabor-worker", STACK_BYTES);
            thread.setDaemon(true);
            return thread;
          });

  private final ReentrantLock turn = new ReentrantLock();
  private final AtomicInteger waiting = new AtomicInteger();
  private final Log log;
  private volatile BooleanSupplier moreToRead = () -> true;

  /** A worker that tells the log what went wrong in tasks that nobody waits for. */
  Worker(Log log) {
    this.log = log;
  }

  /**
   * Tells how to see whether the client has sent more than was read so far. Asked by the reading
   * thread alone: a stream that is being read answers nobody else until something comes.
   */
  void moreToRead(BooleanSupplier check) {
    moreToRead = check;
  }

  /** Asks whether the answer is still wanted. */
  interface Wanted {
    /** Throws {@link CancellationException} if the request was cancelled. */
    void check();
  }

  /** Runs a task after those already waiting. The future fails with what the task throws. */
  <R> CompletableFuture<R> submit(Function<Wanted, R> task) {
    CompletableFuture<R> future = new CompletableFuture<>();
    enqueue(task, future);
    return future;
  }

  /** Runs a task after those already waiting; what it throws goes to the log. */
  void later(Runnable task) {
    enqueue(logged(task), new CompletableFuture<>());
  }

  private <R> void enqueue(Function<Wanted, R> task, CompletableFuture<R> future) {
    waiting.incrementAndGet();
    executor.execute(
        () -> {
          turn.lock();
          try {
            run(task, future);
          } finally {
            turn.unlock();
            waiting.decrementAndGet();
          }
        });
  }

  private Function<Wanted, Boolean> logged(Runnable task) {
    return wanted -> {
      try {
        task.run();
      } catch (RuntimeException | StackOverflowError e) {
        log.say("in a check", e);
      }
      return true;
    };
  }

  /**
   * Runs a task for the reading thread: here and now where nothing waits, else after those already
   * waiting.
   */
  void soon(Runnable task) {
    if (waiting.get() == 0 && !moreToRead.getAsBoolean() && turn.tryLock()) {
      try {
        run(logged(task), new CompletableFuture<>());
      } finally {
        turn.unlock();
      }
    } else {
      later(task);
    }
  }

  private static <R> void run(Function<Wanted, R> task, CompletableFuture<R> future) {
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
