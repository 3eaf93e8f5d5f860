package tabor.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The order of names as people count: {@code week-2} before {@code week-10}. */
final class NaturalOrder {
  private NaturalOrder() {}

  /** A path and what its folders and its file are called. */
  private record Named(Path path, String[] names) {
    static Named of(Path path) {
      String[] names = new String[path.getNameCount()];
      for (int i = 0; i < names.length; i++) {
        names[i] = path.getName(i).toString();
      }
      return new Named(path, names);
    }
  }

  /** The same paths, folder by folder. */
  static List<Path> sorted(List<Path> paths) {
    // Names are taken from their paths once: many comparisons ask for each.
    Named[] named = new Named[paths.size()];
    for (int i = 0; i < named.length; i++) {
      named[i] = Named.of(paths.get(i));
    }
    Arrays.sort(named, NaturalOrder::compare);
    List<Path> sorted = new ArrayList<>(named.length);
    for (Named one : named) {
      sorted.add(one.path());
    }
    return sorted;
  }

  private static int compare(Named one, Named other) {
    int most = Math.min(one.names().length, other.names().length);
    for (int i = 0; i < most; i++) {
      int names = compare(one.names()[i], other.names()[i]);
      if (names != 0) {
        return names;
      }
    }
    int depth = Integer.compare(one.names().length, other.names().length);
    return depth != 0 ? depth : one.path().compareTo(other.path());
  }

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
