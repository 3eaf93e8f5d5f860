package tabor.lists;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;

/**
 * Looks through collections without streams. Java links the first stream of a process at some cost,
 * more than a page of a lesson has to give; where a text is read, checked, drawn and written, this
 * stands instead.
 */
public final class Lists {
  private Lists() {}

  /** True if the condition holds for any of them. */
  public static <T> boolean any(Collection<T> items, Predicate<? super T> condition) {
    for (T item : items) {
      if (condition.test(item)) {
        return true;
      }
    }
    return false;
  }

  /** True if the condition holds for each of them, as it does for none at all. */
  public static <T> boolean all(Collection<T> items, Predicate<? super T> condition) {
    for (T item : items) {
      if (!condition.test(item)) {
        return false;
      }
    }
    return true;
  }

  /** The first that the condition holds for; empty if it holds for none. */
  public static <T> Optional<T> first(Collection<T> items, Predicate<? super T> condition) {
    for (T item : items) {
      if (condition.test(item)) {
        return Optional.of(item);
      }
    }
    return Optional.empty();
  }

  /** How many of them the condition holds for. */
  public static <T> int count(Collection<T> items, Predicate<? super T> condition) {
    int count = 0;
    for (T item : items) {
      count += condition.test(item) ? 1 : 0;
    }
    return count;
  }

  /** The largest number that the function gives for any of them; 0 if none is above that. */
  public static <T> int most(Collection<T> items, ToIntFunction<? super T> number) {
    int most = 0;
    for (T item : items) {
      most = Math.max(most, number.applyAsInt(item));
    }
    return most;
  }

  /** The largest size that the function gives for any of them; 0 if none is above that. */
  public static <T> double largest(Collection<T> items, ToDoubleFunction<? super T> size) {
    double largest = 0;
    for (T item : items) {
      largest = Math.max(largest, size.applyAsDouble(item));
    }
    return largest;
  }

  /** What the function gives for all of them together, added in order. */
  public static <T> double sum(Collection<T> items, ToDoubleFunction<? super T> size) {
    double sum = 0;
    for (T item : items) {
      sum += size.applyAsDouble(item);
    }
    return sum;
  }

  /** Those that the condition holds for, in order, as a list that is not changed. */
  public static <T> List<T> filter(Collection<? extends T> items, Predicate<? super T> condition) {
    List<T> kept = new ArrayList<>(items.size());
    for (T item : items) {
      if (condition.test(item)) {
        kept.add(item);
      }
    }
    return Collections.unmodifiableList(kept);
  }

  /** The numbers from 0 up to, not with, a count. */
  public static List<Integer> numbers(int count) {
    List<Integer> numbers = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      numbers.add(i);
    }
    return numbers;
  }

  /** What the function makes of each, in order, as a list that is not changed. */
  public static <T, R> List<R> map(Collection<T> items, Function<? super T, ? extends R> function) {
    List<R> made = new ArrayList<>(items.size());
    for (T item : items) {
      made.add(function.apply(item));
    }
    return Collections.unmodifiableList(made);
  }
}
