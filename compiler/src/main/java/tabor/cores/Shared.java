package tabor.cores;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * A list of things that several threads work on together: each takes the next one that nobody has
 * taken.
 */
final class Shared<T, R> implements Runnable {
  private final List<T> things;
  private final Function<? super T, ? extends R> work;
  private final AtomicReferenceArray<@Nullable R> results;
  private final AtomicInteger next = new AtomicInteger();
  private @Nullable Throwable failure;
  private int failed = Integer.MAX_VALUE;

  Shared(List<T> things, Function<? super T, ? extends R> work) {
    this.things = things;
    this.work = work;
    this.results = new AtomicReferenceArray<>(things.size());
  }

  /** Works until nothing is left, or nothing that comes before a failure. */
  @Override
  public void run() {
    int i = next.getAndIncrement();
    while (i < things.size() && i < failed()) {
      try {
        results.set(i, work.apply(things.get(i)));
      } catch (RuntimeException | Error e) {
        failed(i, e);
      }
      i = next.getAndIncrement();
    }
  }

  private synchronized int failed() {
    return failed;
  }

  private synchronized void failed(int at, Throwable why) {
    if (at < failed) {
      failed = at;
      failure = why;
    }
  }

  /** What came of it, once all threads are done; throws what the first thing that failed threw. */
  synchronized List<R> results() {
    if (failure instanceof RuntimeException thrown) {
      throw thrown;
    }
    if (failure instanceof Error thrown) {
      throw thrown;
    }
    List<R> all = new ArrayList<>(things.size());
    for (int i = 0; i < things.size(); i++) {
      all.add(java.util.Objects.requireNonNull(results.get(i)));
    }
    return all;
  }
}
