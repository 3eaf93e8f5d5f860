package tabor.body;

import java.util.Arrays;

/** The way back through all instants: where each state came from and by which choice. */
final class Backpointers {
  private final int[] starts;
  private int steps;
  private int[] origins;
  private short[] choices;
  private int size;

  /** Room for so many steps. */
  Backpointers(int count) {
    starts = new int[count];
    origins = new int[Math.max(16, count * 4)];
    choices = new short[origins.length];
  }

  /** Adds the states of the next step. */
  void add(StateTable table) {
    starts[steps++] = size;
    if (size + table.size() > origins.length) {
      int more = Math.max(size + table.size(), origins.length + (origins.length >> 1));
      origins = Arrays.copyOf(origins, more);
      choices = Arrays.copyOf(choices, more);
    }
    for (int i = 0; i < table.size(); i++) {
      origins[size] = table.origin(i);
      choices[size++] = (short) table.choice(i);
    }
  }

  /** The number that the state before {@code index} had. */
  int origin(int step, int index) {
    return origins[starts[step] + index];
  }

  /** The choice that led to state {@code index}. */
  int choice(int step, int index) {
    return choices[starts[step] + index];
  }
}
