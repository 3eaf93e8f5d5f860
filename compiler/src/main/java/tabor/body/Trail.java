package tabor.body;

import java.util.Arrays;

/** The way back through all instants: where each state came from and by which option. */
final class Trail {
  private final int[] starts;
  private int steps;
  private int[] origins;
  private short[] options;
  private int size;

  /** A trail of so many steps. */
  Trail(int count) {
    starts = new int[count];
    origins = new int[Math.max(16, count * 4)];
    options = new short[origins.length];
  }

  /** Adds the states of the next step. */
  void add(StateTable table) {
    starts[steps++] = size;
    if (size + table.size() > origins.length) {
      int more = Math.max(size + table.size(), origins.length + (origins.length >> 1));
      origins = Arrays.copyOf(origins, more);
      options = Arrays.copyOf(options, more);
    }
    for (int i = 0; i < table.size(); i++) {
      origins[size] = table.origin(i);
      options[size++] = (short) table.option(i);
    }
  }

  /** The number that the state before {@code index} had. */
  int origin(int step, int index) {
    return origins[starts[step] + index];
  }

  /** The option that led to state {@code index}. */
  int option(int step, int index) {
    return options[starts[step] + index];
  }
}
