package tabor.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Predicate;
import tabor.cores.SpareCores;

/** Does the same with many things, on all cores. */
final class AllCores {
  private AllCores() {}

  /**
   * The results in the order of the things. The first failure in that order ends everything; what
   * is being worked on is finished, nothing else is begun.
   *
   * @param name what a thing is called while it is worked on
   */
  static <T, R> List<R> map(
      List<T> things, Function<T, R> work, Progress progress, Function<T, String> name) {
    List<R> results = new ArrayList<>(things.size());
    each(things, work, progress, name, results::add);
    return results;
  }

  /**
   * The things that something is not true of, in order. A core looks through one stretch of them:
   * for a quick look a task for each thing would cost more than the look.
   *
   * @param name what is being done
   */
  static <T> List<T> without(List<T> things, Predicate<T> look, Progress progress, String name) {
    int cores = Runtime.getRuntime().availableProcessors();
    int size = Math.max(1, -Math.floorDiv(-things.size(), cores));
    List<List<T>> stretches = new ArrayList<>();
    for (int from = 0; from < things.size(); from += size) {
      stretches.add(things.subList(from, Math.min(things.size(), from + size)));
    }
    List<T> left = new ArrayList<>();
    for (List<T> found :
        map(stretches, stretch -> leftOf(stretch, look), progress, stretch -> name)) {
      left.addAll(found);
    }
    return left;
  }

  private static <T> List<T> leftOf(List<T> things, Predicate<T> look) {
    List<T> left = new ArrayList<>();
    for (T thing : things) {
      if (!look.test(thing)) {
        left.add(thing);
      }
    }
    return left;
  }

  /**
   * The same, each result taken on as soon as it and all before it are there.
   *
   * @param taker called on this thread
   */
  static <T, R> void each(
      List<T> things,
      Function<T, R> work,
      Progress progress,
      Function<T, String> name,
      Consumer<R> taker) {
    int threads = Math.max(1, Math.min(things.size(), Runtime.getRuntime().availableProcessors()));
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    // While all cores are at work here, what is done with one thing asks for no more of them.
    int borrowed = SpareCores.borrow(threads - 1);
    try {
      List<Future<R>> futures = new ArrayList<>(things.size());
      for (T thing : things) {
        futures.add(pool.submit(() -> work.apply(thing)));
      }
      for (int i = 0; i < futures.size(); i++) {
        progress.at(name.apply(things.get(i)), i, things.size());
        taker.accept(result(futures.get(i)));
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw Failure.outside("broken off");
    } finally {
      progress.done();
      pool.shutdownNow();
      SpareCores.share(borrowed);
    }
  }

  private static <R> R result(Future<R> future) throws InterruptedException {
    try {
      return future.get();
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException failure) {
        throw failure;
      }
      if (e.getCause() instanceof Error error) {
        throw error;
      }
      throw new IllegalStateException(e);
    }
  }
}
