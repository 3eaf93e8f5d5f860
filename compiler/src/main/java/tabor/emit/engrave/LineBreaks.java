package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Breaks sections into lines at barlines, best overall and not line by line. What a break costs:
 *
 * <ul>
 *   <li>for each line the square of the logarithm of its room over what its bars want; crowding
 *       counts more than stretching, and far more where the notes come closer than a reader likes;
 *   <li>for each two lines that follow each other the square of the logarithm of the one's want
 *       over the other's, so that equal bars are spread evenly;
 *   <li>a bar left alone in the last line.
 * </ul>
 *
 * Sections that are broken together share their breaks: the sum of their costs is least.
 */
final class LineBreaks {
  /** More bars than this are never put in one line. */
  private static final int MOST = 24;

  /** The part of what is not crowded at which notes can still be told apart at sight. */
  private static final double LEGIBLE = 0.78;

  private static final double CROWDING = 2.5;
  private static final double UNREADABLE = 12;
  private static final double UNEVEN = 4;
  private static final double ALONE = 0.5;

  /**
   * What is known of the bars of one section.
   *
   * @param numbers of the bars
   * @param wants width of each at the density of an ordinary page
   * @param comfort width of each below which it is crowded
   * @param least width of each at which its signs still clear each other
   * @param first room for bars in the first line
   * @param later room for bars in each later line
   */
  record Measured(
      List<Integer> numbers,
      double[] wants,
      double[] comfort,
      double[] least,
      double first,
      double later) {
    int count() {
      return wants.length;
    }

    /** The same bars in lines of other widths. */
    Measured inRoom(double firstLine, double laterLines) {
      return new Measured(numbers, wants, comfort, least, firstLine, laterLines);
    }

    double room(int start) {
      return start == 0 ? first : later;
    }
  }

  private final List<Measured> sections;
  private final int count;
  private final boolean exact;
  private final TreeSet<Integer> forced = new TreeSet<>();

  /** Running sums, so that a line's want is a difference. */
  private final List<double[][]> sums = new ArrayList<>();

  /**
   * Sections to break alike.
   *
   * @param sections all of the same number of bars
   * @param wishes of whoever wrote or prints them
   */
  LineBreaks(List<Measured> sections, LineWishes wishes) {
    this.sections = sections;
    this.count = sections.get(0).count();
    for (Measured section : sections) {
      sums.add(
          new double[][] {
            running(section.wants()), running(section.comfort()), running(section.least())
          });
    }
    for (int i = 1; i < count; i++) {
      if (wishes.starts().contains(sections.get(0).numbers().get(i))) {
        forced.add(i);
      }
    }
    this.exact = wishes.barsALine() > 0;
    if (exact) {
      forced.addAll(inLines(wishes.barsALine()));
    }
  }

  private static double[] running(double[] widths) {
    double[] sums = new double[widths.length + 1];
    for (int i = 0; i < widths.length; i++) {
      sums[i + 1] = sums[i] + widths[i];
    }
    return sums;
  }

  /** So many bars a line, or, where these cannot fit, fewer, evenly. A pickup counts for none. */
  private Set<Integer> inLines(int wanted) {
    int pickup = sections.get(0).numbers().get(0) == 0 ? 1 : 0;
    for (int most = wanted; most > 1; most--) {
      int size = most;
      if (most < wanted) {
        int lines = ceiling(count - pickup, most);
        size = ceiling(count - pickup, lines);
      }
      Set<Integer> starts = new TreeSet<>();
      for (int i = pickup + size; i < count; i += size) {
        starts.add(i);
      }
      if (fits(starts)) {
        return starts;
      }
    }
    Set<Integer> each = new TreeSet<>();
    for (int i = pickup + 1; i < count; i++) {
      each.add(i);
    }
    return each;
  }

  private static int ceiling(int a, int b) {
    return Math.floorDiv(a + b - 1, b);
  }

  private boolean fits(Set<Integer> starts) {
    int from = 0;
    List<Integer> ends = new ArrayList<>(starts);
    ends.add(count);
    for (int end : ends) {
      if (!fits(from, end)) {
        return false;
      }
      for (int s = 0; s < sections.size(); s++) {
        if (want(s, 1, from, end) * LEGIBLE > sections.get(s).room(from)) {
          return false;
        }
      }
      from = end;
    }
    return true;
  }

  private boolean fits(int start, int end) {
    for (int s = 0; s < sections.size(); s++) {
      double[] least = sums.get(s)[2];
      if (least[end] - least[start] > sections.get(s).room(start)) {
        return false;
      }
    }
    return true;
  }

  /** True if these bars may stand in one line: a bar alone may, unless lines have their number. */
  private boolean isLine(int start, int end) {
    Integer inside = forced.higher(start);
    if (exact
        && ((start > 0 && !forced.contains(start)) || (end < count && !forced.contains(end)))) {
      return false;
    }
    return end - start == 1
        || (end - start <= MOST && (inside == null || inside >= end) && fits(start, end));
  }

  /** What the line from one bar to before another costs. */
  private double line(int start, int end) {
    boolean whole = start == 0 && end == count;
    double cost = 0;
    for (int s = 0; s < sections.size(); s++) {
      double room = sections.get(s).room(start);
      double stretch = StrictMath.log(room / want(s, 0, start, end));
      // One short line alone need not be filled.
      cost += whole && stretch > 0 ? 0 : stretch * stretch * (stretch < 0 ? CROWDING : 1);
      double crowded = StrictMath.log(want(s, 1, start, end) / room);
      cost += crowded > 0 ? UNREADABLE * crowded * crowded : 0;
    }
    return !whole && end == count && end - start == 1 ? cost + ALONE * sections.size() : cost;
  }

  /** What it costs that two lines follow each other. */
  private double pair(int start, int middle, int end) {
    double cost = 0;
    for (int s = 0; s < sections.size(); s++) {
      double uneven = StrictMath.log(want(s, 0, start, middle) / want(s, 0, middle, end));
      cost += UNEVEN * uneven * uneven;
    }
    return cost;
  }

  private double want(int section, int kind, int start, int end) {
    double[] sum = sums.get(section)[kind];
    return sum[end] - sum[start];
  }

  /** The cost of these breaks; infinite if they are not allowed. */
  double cost(List<Integer> starts) {
    double cost = 0;
    for (int i = 0; i < starts.size(); i++) {
      int end = i + 1 < starts.size() ? starts.get(i + 1) : count;
      if (!isLine(starts.get(i), end)) {
        return Double.POSITIVE_INFINITY;
      }
      cost += line(starts.get(i), end);
      if (i > 0) {
        cost += pair(starts.get(i - 1), starts.get(i), end);
      }
    }
    return cost;
  }

  /** The index of the first bar of each line: the breaks of least cost. */
  List<Integer> best() {
    // best[end][n]: the least cost of the bars before end, the last line holding n of them.
    double[][] best = new double[count + 1][Math.min(MOST, count) + 1];
    int[][] from = new int[count + 1][best[0].length];
    for (int end = 1; end <= count; end++) {
      java.util.Arrays.fill(best[end], Double.POSITIVE_INFINITY);
      for (int bars = 1; bars < best[end].length && bars <= end; bars++) {
        int start = end - bars;
        if (!isLine(start, end)) {
          continue;
        }
        double line = line(start, end);
        if (start == 0) {
          best[end][bars] = line;
          continue;
        }
        for (int before = 1; before < best[start].length && before <= start; before++) {
          if (best[start][before] == Double.POSITIVE_INFINITY) {
            continue;
          }
          double cost = best[start][before] + line + pair(start - before, start, end);
          if (cost < best[end][bars]) {
            best[end][bars] = cost;
            from[end][bars] = before;
          }
        }
      }
    }
    int bars = 1;
    for (int n = 1; n < best[count].length; n++) {
      bars = best[count][n] < best[count][bars] ? n : bars;
    }
    List<Integer> starts = new ArrayList<>();
    for (int end = count; end > 0; ) {
      starts.add(0, end - bars);
      int before = from[end][bars];
      end -= bars;
      bars = before;
    }
    return starts;
  }
}
