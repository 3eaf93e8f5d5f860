package tabor.cli;

import java.nio.file.Path;
import java.util.Comparator;

/** The order of names as people count: {@code week-2} before {@code week-10}. */
final class NaturalOrder {
  private NaturalOrder() {}

  /** Paths folder by folder. */
  static final Comparator<Path> PATHS =
      (one, other) -> {
        int most = Math.min(one.getNameCount(), other.getNameCount());
        for (int i = 0; i < most; i++) {
          int names = compare(one.getName(i).toString(), other.getName(i).toString());
          if (names != 0) {
            return names;
          }
        }
        int depth = Integer.compare(one.getNameCount(), other.getNameCount());
        return depth != 0 ? depth : one.compareTo(other);
      };

  /**
   * Digits in a row count as one number, letters without their case; names that are equal so far
   * stand as their characters do.
   */
  static int compare(String one, String other) {
    int i = 0;
    int k = 0;
    while (i < one.length() && k < other.length()) {
      int iEnd = digits(one, i);
      int kEnd = digits(other, k);
      int order;
      if (iEnd > i && kEnd > k) {
        order = numbers(one.substring(i, iEnd), other.substring(k, kEnd));
        i = iEnd;
        k = kEnd;
      } else {
        order = Character.compare(folded(one.charAt(i++)), folded(other.charAt(k++)));
      }
      if (order != 0) {
        return order;
      }
    }
    int left = Integer.compare(one.length() - i, other.length() - k);
    return left != 0 ? left : one.compareTo(other);
  }

  private static char folded(char c) {
    return Character.toLowerCase(Character.toUpperCase(c));
  }

  private static int digits(String text, int from) {
    int end = from;
    while (end < text.length() && text.charAt(end) >= '0' && text.charAt(end) <= '9') {
      end++;
    }
    return end;
  }

  private static int numbers(String one, String other) {
    String mine = one.substring(zeros(one));
    String yours = other.substring(zeros(other));
    int length = Integer.compare(mine.length(), yours.length());
    return length != 0 ? length : mine.compareTo(yours);
  }

  private static int zeros(String digits) {
    int from = 0;
    while (from < digits.length() - 1 && digits.charAt(from) == '0') {
      from++;
    }
    return from;
  }
}
