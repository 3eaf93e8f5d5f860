package tabor.notation;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.rhythm.Time;

/**
 * A stretch of one voice, divided: a beat, or a tuplet inside one. Compared by identity, since two
 * alike tuplets may follow each other.
 */
final class RhythmNode {
  private final @Nullable Ratio ratio;
  private final Time length;
  private final List<Item> items = new ArrayList<>();

  /** What makes a tuplet of it. */
  record Ratio(long actual, long normal, Written.Type unit) {
    Time factor() {
      return Time.of(normal, actual);
    }
  }

  /**
   * Something in the stretch, from {@code at} on, in written time from the stretch's start.
   *
   * @param inner the tuplet that stands there; null where a stroke starts or a roll ends
   */
  record Item(Time at, @Nullable RhythmNode inner) {
    boolean isTuplet() {
      return inner != null;
    }
  }

  /**
   * @param ratio null for what is not a tuplet
   * @param length the sum of the written values in it
   */
  RhythmNode(@Nullable Ratio ratio, Time length) {
    this.ratio = ratio;
    this.length = length;
  }

  boolean isTuplet() {
    return ratio != null;
  }

  /** The tuplet's numbers; only for a tuplet. */
  Ratio ratio() {
    if (ratio == null) {
      throw new IllegalStateException("not a tuplet");
    }
    return ratio;
  }

  /** The sum of the written values in it. */
  Time length() {
    return length;
  }

  /** Actual over written time. */
  Time factor() {
    return ratio == null ? Time.ONE : ratio.factor();
  }

  /** What stands in it; in order of time once all is added and {@link #sort} was called. */
  List<Item> items() {
    return items;
  }

  void add(Time at, @Nullable RhythmNode inner) {
    items.add(new Item(at, inner));
  }

  /** Puts the items in order and keeps one of those that start together. */
  void sort() {
    items.sort((a, b) -> a.at().compareTo(b.at()));
    List<Item> kept = new ArrayList<>();
    for (Item item : items) {
      if (item.inner() != null) {
        item.inner().sort();
      }
      if (kept.isEmpty() || !kept.get(kept.size() - 1).at().equals(item.at())) {
        kept.add(item);
      }
    }
    items.clear();
    items.addAll(kept);
  }
}
