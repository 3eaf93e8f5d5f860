package tabor.cores;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentSkipListSet;
import java.util.concurrent.CountDownLatch;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** However many cores there are, what comes out is what a loop gives. */
class SpareCoresTest {
  private static final List<Integer> THINGS = IntStream.range(0, 500).boxed().toList();

  private static <T> T with(int cores, Supplier<T> work) {
    SpareCores.share(cores);
    try {
      return work.get();
    } finally {
      assertThat(SpareCores.borrow(cores)).as("cores given back").isEqualTo(cores);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 3})
  void resultsAreInTheOrderOfTheThings(int cores) {
    List<String> results = with(cores, () -> SpareCores.map(THINGS, i -> "<" + i + ">"));
    assertThat(results).isEqualTo(THINGS.stream().map(i -> "<" + i + ">").toList());
  }

  @Test
  void nothingGivesNothing() {
    assertThat(with(2, () -> SpareCores.map(List.<Integer>of(), i -> i))).isEmpty();
  }

  /**
   * What comes of two things of which each waits until the other has begun, which only two threads
   * can do.
   */
  private static <R> List<R> twoAtOnce(Supplier<R> work) {
    CountDownLatch begun = new CountDownLatch(2);
    return with(
        1,
        () ->
            SpareCores.map(
                List.of(1, 2),
                i -> {
                  begun.countDown();
                  await(begun);
                  return work.get();
                }));
  }

  @Test
  void twoThingsAreDoneAtOnce() {
    List<String> threads = twoAtOnce(() -> Thread.currentThread().getName());
    assertThat(threads).doesNotHaveDuplicates();
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 3})
  void theFirstFailureInOrderIsThrownAsItIs(int cores) {
    IllegalStateException early = new IllegalStateException("early");
    StackOverflowError late = new StackOverflowError("late");
    CountDownLatch failed = new CountDownLatch(cores == 0 ? 0 : 1);
    assertThatThrownBy(
            () ->
                with(
                    cores,
                    () ->
                        SpareCores.map(
                            THINGS,
                            i -> {
                              if (i == 7) {
                                await(failed);
                                throw early;
                              }
                              if (i > 7) {
                                failed.countDown();
                                throw late;
                              }
                              return i;
                            })))
        .isSameAs(early);
  }

  /** All before it is done, and of what comes after it nothing that was not begun already. */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 3})
  void nothingIsBegunAfterAFailure(int cores) {
    Set<Integer> begun = new ConcurrentSkipListSet<>();
    assertThatThrownBy(
            () ->
                with(
                    cores,
                    () ->
                        SpareCores.map(
                            THINGS,
                            i -> {
                              begun.add(i);
                              if (i >= 100) {
                                throw new IllegalArgumentException("at " + i);
                              }
                              return i;
                            })))
        .hasMessage("at 100");
    assertThat(begun).containsAll(THINGS.subList(0, 101));
    assertThat(begun.size()).isLessThanOrEqualTo(101 + cores);
  }

  @Test
  void coresAreGivenBack() {
    with(
        2,
        () -> {
          SpareCores.map(THINGS, i -> i);
          assertThatThrownBy(() -> SpareCores.map(THINGS, i -> i / (i - 3)))
              .isInstanceOf(ArithmeticException.class);
          assertThat(SpareCores.borrow(5)).isEqualTo(2);
          SpareCores.share(2);
          return true;
        });
    assertThat(SpareCores.borrow(1)).isZero();
  }

  /** What is done with one thing finds no core that is at work already. */
  @Test
  void workWithinWorkTakesNoMoreCores() {
    Set<String> threads = new TreeSet<>();
    twoAtOnce(() -> SpareCores.map(THINGS, j -> Thread.currentThread().getName()))
        .forEach(threads::addAll);
    assertThat(threads.size()).isLessThanOrEqualTo(2);
  }

  @Test
  void anInterruptionIsKeptForWhoeverAsked() {
    List<Integer> all = new ArrayList<>();
    Thread.currentThread().interrupt();
    all.addAll(with(2, () -> SpareCores.map(THINGS, i -> i)));
    assertThat(Thread.interrupted()).isTrue();
    assertThat(all).isEqualTo(THINGS);
  }
}
