package tabor.compare;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Lays one row of things over another, in order, at the least cost: each is paired with one of the
 * other row or stays alone.
 */
public final class Alignment {
  /** The cost of a pair that must not be. */
  public static final int NEVER = Integer.MAX_VALUE / 4;

  /** Rows whose lengths multiply to more than this are laid over each other more roughly. */
  private static final long MOST_CELLS = 4_000_000;

  /** How far the rough way looks ahead for an equal. */
  private static final int AHEAD = 200;

  /** What it costs to pair two or to leave one alone. */
  public interface Cost {
    /** 0 for equals, {@link #NEVER} for two that must not be paired. */
    int pair(int left, int right);

    /** What it costs to leave one of the left row alone; more than 0. */
    int left(int index);

    /** What it costs to leave one of the right row alone; more than 0. */
    int right(int index);

    /** A number of one of the left row: no pair of different numbers costs 0. */
    default int leftNumber(int index) {
      return 0;
    }

    /** The same for one of the right row. */
    default int rightNumber(int index) {
      return 0;
    }
  }

  /**
   * Two that belong together, or one alone.
   *
   * @param left index in the left row; -1 where it has none
   * @param right index in the right row; -1 where it has none
   */
  public record Pair(int left, int right) {
    /** True if neither is missing. */
    public boolean isWhole() {
      return left >= 0 && right >= 0;
    }
  }

  private Alignment() {}

  /** Every index of both rows once, in order. Where costs are even a pair comes before a gap. */
  public static List<Pair> of(int left, int right, Cost cost) {
    List<Pair> pairs = new ArrayList<>();
    int head = 0;
    while (head < left && head < right && cost.pair(head, head) == 0) {
      pairs.add(new Pair(head, head));
      head++;
    }
    int tail = 0;
    while (tail < left - head
        && tail < right - head
        && cost.pair(left - 1 - tail, right - 1 - tail) == 0) {
      tail++;
    }
    long cells = (long) (left - head - tail + 1) * (right - head - tail + 1);
    pairs.addAll(
        cells > MOST_CELLS
            ? roughly(head, left - tail, right - tail, cost)
            : exactly(head, left - tail, right - tail, cost));
    for (int i = tail; i > 0; i--) {
      pairs.add(new Pair(left - i, right - i));
    }
    return pairs;
  }

  private static List<Pair> exactly(int from, int leftEnd, int rightEnd, Cost cost) {
    int n = leftEnd - from;
    int m = rightEnd - from;
    int[][] best = new int[n + 1][m + 1];
    for (int i = n; i >= 0; i--) {
      for (int j = m; j >= 0; j--) {
        best[i][j] = cell(best, i, j, n, m, from, cost);
      }
    }
    List<Pair> pairs = new ArrayList<>();
    int i = 0;
    int j = 0;
    while (i < n || j < m) {
      if (i < n && j < m) {
        int pair = cost.pair(from + i, from + j);
        if (pair < NEVER && best[i][j] == pair + best[i + 1][j + 1]) {
          pairs.add(new Pair(from + i++, from + j++));
          continue;
        }
      }
      if (i < n && best[i][j] == cost.left(from + i) + best[i + 1][j]) {
        pairs.add(new Pair(from + i++, -1));
      } else {
        pairs.add(new Pair(-1, from + j++));
      }
    }
    return pairs;
  }

  private static int cell(int[][] best, int i, int j, int n, int m, int from, Cost cost) {
    if (i == n && j == m) {
      return 0;
    }
    int least = Integer.MAX_VALUE;
    if (i < n) {
      least = cost.left(from + i) + best[i + 1][j];
    }
    if (j < m) {
      least = Math.min(least, cost.right(from + j) + best[i][j + 1]);
    }
    if (i < n && j < m) {
      int pair = cost.pair(from + i, from + j);
      least = pair < NEVER ? Math.min(least, pair + best[i + 1][j + 1]) : least;
    }
    return least;
  }

  private static List<Pair> roughly(int from, int leftEnd, int rightEnd, Cost cost) {
    List<Pair> pairs = new ArrayList<>();
    int[] numbers = new int[rightEnd];
    for (int j = from; j < rightEnd; j++) {
      numbers[j] = cost.rightNumber(j);
    }
    int next = from;
    for (int i = from; i < leftEnd; i++) {
      int number = cost.leftNumber(i);
      int found = -1;
      for (int j = next; j < Math.min(rightEnd, next + AHEAD) && found < 0; j++) {
        found = numbers[j] == number && cost.pair(i, j) == 0 ? j : -1;
      }
      if (found < 0) {
        pairs.add(new Pair(i, -1));
      } else {
        while (next < found) {
          pairs.add(new Pair(-1, next++));
        }
        pairs.add(new Pair(i, next++));
      }
    }
    while (next < rightEnd) {
      pairs.add(new Pair(-1, next++));
    }
    return Collections.unmodifiableList(pairs);
  }
}
