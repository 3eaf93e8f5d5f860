package tabor.syntax;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** Numbers as people say them, where the notation writes digits. */
public final class Numerals {
  private static final List<String> TIMES = List.of("once", "twice", "thrice");

  private static final List<String> NUMBERS =
      List.of(
          "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
          "twelve");

  private Numerals() {}

  /** {@code 1st}, {@code 2nd}, {@code 11th}: a number's place in a row. */
  public static String ordinal(String digits) {
    return digits
        + (digits.matches("(.*[^1])?1")
            ? "st"
            : digits.matches("(.*[^1])?2") ? "nd" : digits.matches("(.*[^1])?3") ? "rd" : "th");
  }

  /** How often {@code once}, {@code twice} or {@code thrice} is; null for any other word. */
  public static @Nullable Integer times(String word) {
    return TIMES.contains(word) ? (Integer) (TIMES.indexOf(word) + 1) : null;
  }

  /** The number from {@code one} to {@code twelve}; null for any other word. */
  public static @Nullable Integer number(String word) {
    return NUMBERS.contains(word) ? (Integer) (NUMBERS.indexOf(word) + 1) : null;
  }
}
