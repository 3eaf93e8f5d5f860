package tabor.body;

import java.util.Arrays;

/** The states after one instant, each with its cheapest way there; the first of equals stays. */
final class StateTable {
  private int[] slots = new int[64];
  private long[] states = new long[16];
  private long[] costs = new long[16];
  private int[] from = new int[16];
  private int[] by = new int[16];
  private int size;

  /** Empties the table and makes room for so many states. */
  void clear(int most) {
    if (most * 2 > slots.length) {
      slots = new int[Integer.highestOneBit(most) * 4];
    } else {
      Arrays.fill(slots, 0);
    }
    size = 0;
  }

  /** Offers a way to a state. */
  void offer(long state, long cost, int origin, int choice) {
    int mask = slots.length - 1;
    int slot = (int) ((state * 0x9E3779B97F4A7C15L) >>> 40) & mask;
    while (slots[slot] != 0 && states[slots[slot] - 1] != state) {
      slot = (slot + 1) & mask;
    }
    int at = slots[slot] - 1;
    if (at < 0) {
      at = add(state);
      slots[slot] = size;
    } else if (costs[at] <= cost) {
      return;
    }
    costs[at] = cost;
    from[at] = origin;
    by[at] = choice;
  }

  private int add(long state) {
    if (size == states.length) {
      states = Arrays.copyOf(states, size * 2);
      costs = Arrays.copyOf(costs, size * 2);
      from = Arrays.copyOf(from, size * 2);
      by = Arrays.copyOf(by, size * 2);
    }
    states[size] = state;
    return size++;
  }

  /** How many states there are. */
  int size() {
    return size;
  }

  /** A state by its number. */
  long state(int index) {
    return states[index];
  }

  /** The cost of the cheapest way to a state. */
  long cost(int index) {
    return costs[index];
  }

  /** The number that the state before had on that way. */
  int origin(int index) {
    return from[index];
  }

  /** The number of the choice taken on that way. */
  int choice(int index) {
    return by[index];
  }

  /** The number of a state; -1 if it is not there. */
  int indexOf(long state) {
    for (int i = 0; i < size; i++) {
      if (states[i] == state) {
        return i;
      }
    }
    return -1;
  }

  /** All states, in the order in which they were first offered. */
  long[] all() {
    return Arrays.copyOf(states, size);
  }
}
