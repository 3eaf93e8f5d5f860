package tabor.lsp;

import java.time.Duration;
import java.util.EnumMap;
import java.util.Map;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.PriorityBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.BooleanSupplier;
import java.util.function.Function;

/**
 * Who does what when. Each lane is one thread that does one thing after another, so that nothing
 * that is kept between them needs a lock; nothing in one lane waits for what another has begun.
 * What a person waits for with the fingers on the keys has a lane of its own, and in it goes first.
 *
 * <p>The thread that reads messages stays free to take in further edits and cancellations. Only
 * where nothing waits on either side does it make a check itself, which saves a keystroke the time
 * that waking a thread takes.
 */
final class Scheduler {
  /** For texts and groups that are read by recursion. */
  static final long STACK_BYTES = 4L << 20;

  private static final long LOOK_AGAIN_MILLIS = 5;

  /** However short its tasks are, all of them together get no longer when it is closed. */
  private static final long LONGEST_CLOSE_NANOS = 10_000_000_000L;

  /** A thread's worth of work. */
  enum Lane {
    /** Compiles, checks, and answers what is asked at every key. */
    TYPING,
    /** Answers from what was compiled. */
    READING,
    /** Tries fixes out, which compiles other texts. */
    FIXING,
    /** Makes files. */
    BUILDING
  }

  /** What goes first in a lane. */
  enum Rank {
    /** The file that was just changed. */
    CHECK,
    /** A request. */
    ANSWER,
    /** The files that rest on one that was changed. */
    DEPENDENTS
  }

  private static final class Task implements Runnable, Comparable<Task> {
    private final Rank rank;
    private final long number;
    private final Runnable work;

    Task(Rank rank, long number, Runnable work) {
      this.rank = rank;
      this.number = number;
      this.work = work;
    }

    @Override
    public void run() {
      work.run();
    }

    @Override
    public int compareTo(Task other) {
      return rank == other.rank ? Long.compare(number, other.number) : rank.compareTo(other.rank);
    }
  }

  /** Asks whether the answer is still wanted. */
  interface Wanted {
    /** Throws {@link CancellationException} if the request was cancelled. */
    void check();
  }

  private final Map<Lane, ThreadPoolExecutor> lanes = new EnumMap<>(Lane.class);

  /** When each lane began its last task, as {@link System#nanoTime} has it. */
  private final Map<Lane, AtomicLong> begun = new EnumMap<>(Lane.class);

  private final AtomicLong numbers = new AtomicLong();
  private final ReentrantLock typing = new ReentrantLock();
  private final AtomicInteger waiting = new AtomicInteger();
  private final Log log;
  private volatile BooleanSupplier moreToRead = () -> true;

  /** A scheduler that tells the log what went wrong in tasks that nobody waits for. */
  Scheduler(Log log) {
    this.log = log;
    for (Lane lane : Lane.values()) {
      begun.put(lane, new AtomicLong(System.nanoTime()));
      lanes.put(lane, executor(lane));
    }
  }

  private static ThreadPoolExecutor executor(Lane lane) {
    BlockingQueue<Runnable> queue =
        lane == Lane.TYPING ? new PriorityBlockingQueue<>() : new LinkedBlockingQueue<>();
    return new ThreadPoolExecutor(
        1, 1, 0, TimeUnit.SECONDS, queue, task -> thread(lane, task)); // started when first needed
  }

  @SuppressWarnings("ThreadPriorityCheck") // a hint that spares the keys; nothing rests on it
  private static Thread thread(Lane lane, Runnable task) {
    String name = "tabor-" + lane.name().toLowerCase(java.util.Locale.ROOT);
    Thread thread = new Thread(null, task, name, STACK_BYTES);
    thread.setDaemon(true);
    if (lane == Lane.BUILDING) {
      thread.setPriority(Thread.MIN_PRIORITY);
    }
    return thread;
  }

  /**
   * Tells how to see whether the client has sent more than was read so far. Asked by the reading
   * thread alone: a stream that is being read answers nobody else until something comes.
   */
  void moreToRead(BooleanSupplier check) {
    moreToRead = check;
  }

  /** True while something is checked or waits for it. */
  boolean isTyping() {
    return waiting.get() > 0 || typing.isLocked();
  }

  /** Runs a task in its turn. The future fails with what the task throws. */
  <R> CompletableFuture<R> submit(Lane lane, Function<Wanted, R> task) {
    CompletableFuture<R> answer = new CompletableFuture<>();
    submit(lane, answer, task);
    return answer;
  }

  /** Runs a task in its turn, as a part of what {@code answer} comes to. */
  <R> void submit(Lane lane, CompletableFuture<R> answer, Function<Wanted, R> task) {
    enqueue(
        lane,
        Rank.ANSWER,
        () -> attempt(answer, () -> answer.complete(task.apply(wanted(answer)))));
  }

  /** Runs work whose end is not the answer yet; what it throws is. */
  void attempt(Lane lane, CompletableFuture<?> answer, Runnable work) {
    enqueue(lane, Rank.ANSWER, () -> attempt(answer, work));
  }

  private static void attempt(CompletableFuture<?> answer, Runnable work) {
    if (answer.isDone()) {
      return; // cancelled while it waited
    }
    try {
      work.run();
    } catch (Throwable e) { // a request that fails must not take the server with it
      answer.completeExceptionally(e);
    }
  }

  /** Asks whether a future is still waited for. */
  static Wanted wanted(CompletableFuture<?> answer) {
    return () -> {
      if (answer.isDone()) {
        throw new CancellationException();
      }
    };
  }

  private void enqueue(Lane lane, Rank rank, Runnable work) {
    Runnable whole = work;
    if (lane == Lane.TYPING) {
      waiting.incrementAndGet();
      whole =
          () -> {
            typing.lock();
            try {
              work.run();
            } finally {
              typing.unlock();
              waiting.decrementAndGet();
            }
          };
    }
    ThreadPoolExecutor executor = lanes.get(lane);
    AtomicLong start = begun.get(lane);
    if (executor != null && start != null && !executor.isShutdown()) {
      Runnable last = whole;
      Runnable timed =
          () -> {
            start.set(System.nanoTime());
            last.run();
          };
      executor.execute(new Task(rank, numbers.getAndIncrement(), timed));
    }
  }

  /** Runs a check in its turn; what it throws goes to the log. */
  void later(Rank rank, Runnable task) {
    enqueue(Lane.TYPING, rank, () -> logged(task));
  }

  /** Runs a piece of work that nobody has asked for yet, behind what was asked of its lane. */
  void ahead(Lane lane, Runnable task) {
    enqueue(lane, Rank.DEPENDENTS, () -> logged(task));
  }

  private void logged(Runnable task) {
    try {
      task.run();
    } catch (RuntimeException | StackOverflowError e) {
      log.say("in a check", e);
    }
  }

  /** Runs a check for the reading thread: here and now where nothing waits, else in its turn. */
  void soon(Runnable task) {
    if (waiting.get() == 0 && !moreToRead.getAsBoolean() && typing.tryLock()) {
      try {
        logged(task);
      } finally {
        typing.unlock();
      }
    } else {
      later(Rank.CHECK, task);
    }
  }

  /**
   * Takes no more tasks, and lets those that were taken come to their end, unless one of them takes
   * long: nobody waits for its answer any more.
   *
   * @param patience how long one task may go on from here
   * @return true if nothing runs any more
   */
  boolean close(Duration patience) {
    long now = System.nanoTime();
    boolean ended = true;
    try {
      // What one lane has begun may go on in a later one.
      for (Lane lane : Lane.values()) {
        ended &= ended(lane, now, patience.toNanos());
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      ended = false;
    }
    lanes.values().forEach(ThreadPoolExecutor::shutdownNow);
    return ended;
  }

  private boolean ended(Lane lane, long now, long patience) throws InterruptedException {
    ThreadPoolExecutor executor = lanes.get(lane);
    AtomicLong task = begun.get(lane);
    if (executor == null || task == null) {
      return true;
    }
    executor.shutdown();
    while (!executor.awaitTermination(LOOK_AGAIN_MILLIS, TimeUnit.MILLISECONDS)) {
      long asked = System.nanoTime();
      if (asked - now > Math.max(patience, LONGEST_CLOSE_NANOS)
          || asked - Math.max(now, task.get()) > patience) {
        return false;
      }
    }
    return true;
  }
}
