package tabor.body;

/** What one limb did last in each of some states: few different things, each named by a number. */
final class Pasts {
  private final int[] numbers;
  private int[] different = new int[8];
  private int size;

  /** For so many states. */
  Pasts(int states) {
    numbers = new int[states];
  }

  /** Notes what the limb did last in a state. */
  void add(int state, int last) {
    int i = 0;
    while (i < size && different[i] != last) {
      i++;
    }
    if (i == size) {
      if (size == different.length) {
        different = java.util.Arrays.copyOf(different, size * 2);
      }
      different[size++] = last;
    }
    numbers[state] = i;
  }

  /** The number of what the limb did last in a state. */
  int of(int state) {
    return numbers[state];
  }

  /** How many different things there are. */
  int size() {
    return size;
  }

  /** What a number stands for. */
  int last(int number) {
    return different[number];
  }
}
