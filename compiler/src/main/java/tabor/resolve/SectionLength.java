package tabor.resolve;

import java.util.List;
import tabor.rhythm.Time;

/**
 * How long a section is and where its systems start.
 *
 * @param bars whole bars of the section
 * @param systems the first bar of each system, 1-based, as many as there are systems
 * @param fits false if something did not agree
 */
record SectionLength(int bars, List<Integer> systems, boolean fits) {
  /** Copies the list. */
  SectionLength {
    systems = List.copyOf(systems);
  }

  /** {@code 1 bar}, {@code 3 bars}. */
  static String bars(long bars) {
    return bars == 1 ? "1 bar" : bars + " bars";
  }

  /**
   * The {@code bars} line of a groove.
   *
   * @param line where it stands
   * @param bars what it says
   */
  record Said(tabor.syntax.Line line, int bars) {}

  /** The fewest bars that both divide, or more than fit in an int. */
  static long together(long a, long b) {
    return a > Integer.MAX_VALUE || b > Integer.MAX_VALUE ? Long.MAX_VALUE : Time.lcm(a, b);
  }
}
