package tabor.body;

import java.util.List;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.rhythm.CountNames;
import tabor.rhythm.Time;

/** How the body's findings are said. */
final class FindingWords {
  private FindingWords() {}

  /** The count of a stroke: {@code 2&}. */
  static String count(Groove groove, Stroke stroke) {
    return CountNames.of(stroke.slot(), groove.meter(stroke.bar())).toString();
  }

  /** {@code the left hand}. */
  static String limb(Stroke stroke) {
    return "the " + stroke.limb().words();
  }

  /**
   * {@code the hi-hat}, {@code a foot splash}: with its article, fit for the middle of a sentence.
   */
  static String surface(Stroke stroke) {
    return "the " + stroke.surface().words();
  }

  /** {@code a, b and c}. */
  static String and(List<String> parts) {
    int last = parts.size() - 1;
    return last == 0
        ? parts.get(0)
        : String.join(", ", parts.subList(0, last)) + " and " + parts.get(last);
  }

  /** Whole milliseconds, rounded. */
  static long millis(Time seconds) {
    return seconds.times(1000).rounded();
  }

  /** A rate with at most one digit after the point, rounded. */
  static String rate(Time perSecond) {
    long tenths = perSecond.times(10).rounded();
    return tenths % 10 == 0 ? Long.toString(tenths / 10) : tenths / 10 + "." + tenths % 10;
  }
}
