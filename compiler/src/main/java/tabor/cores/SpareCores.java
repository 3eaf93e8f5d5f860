package tabor.cores;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Semaphore;
import java.util.function.Function;

/**
 * The cores that a process may use beside the one that it runs on, and work done on them. Where
 * none is to spare, and in a process that has not said that it may use any, everything is done on
 * the thread that asks: how many there are changes no result, only how soon it is there.
 */
public final class SpareCores {
  private static final Semaphore SPARE = new Semaphore(0);

  private SpareCores() {}

  /** Lets this process use some more cores, 0 or more. */
  public static void share(int cores) {
    SPARE.release(cores);
  }

  /**
   * Keeps cores from others, so that work within work does not ask for them again; to be given back
   * with {@link #share}.
   *
   * @param most how many would be of use, 0 or more
   * @return how many there were, 0 to {@code most}
   */
  public static int borrow(int most) {
    int borrowed = 0;
    while (borrowed < most && SPARE.tryAcquire()) {
      borrowed++;
    }
    return borrowed;
  }

  /**
   * The results in the order of the things, as a loop would give them: the first failure in that
   * order is thrown, and of what comes after it nothing more is begun. Things are begun in order.
   *
   * @param work safe for several threads at once; gives no null
   */
  public static <T, R> List<R> map(List<T> things, Function<? super T, ? extends R> work) {
    int helpers = borrow(things.size() - 1);
    if (helpers == 0) {
      List<R> results = new ArrayList<>(things.size());
      for (T thing : things) {
        results.add(work.apply(thing));
      }
      return results;
    }
    Shared<T, R> shared = new Shared<>(List.copyOf(things), work);
    List<Thread> threads = new ArrayList<>();
    try {
      for (int i = 0; i < helpers; i++) {
        Thread thread = new Thread(shared, "helper");
        thread.setDaemon(true);
        thread.start();
        threads.add(thread);
      }
      shared.run();
    } finally {
      threads.forEach(SpareCores::join);
      share(helpers);
    }
    return shared.results();
  }

  /** Waits for a helper whatever happens, so that nothing is still at work when all is said. */
  private static void join(Thread thread) {
    boolean interrupted = false;
    while (true) {
      try {
        thread.join();
        break;
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
