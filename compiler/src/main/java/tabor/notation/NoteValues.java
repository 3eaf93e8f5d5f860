package tabor.notation;

import java.util.ArrayList;
import java.util.List;
import tabor.rhythm.Time;

/** The note values that can be drawn. */
final class NoteValues {
  /** Every value with and without a dot, the longest first. */
  static final List<Written> LONGEST_FIRST = longestFirst();

  /** The shortest of them. */
  static final Time SHORTEST = Written.Type.THOUSAND_TWENTY_FOURTH.length();

  /** The longest undotted one. */
  static final Time LONGEST = Written.Type.BREVE.length();

  private NoteValues() {}

  private static List<Written> longestFirst() {
    List<Written> values = new ArrayList<>();
    for (Written.Type type : Written.Type.values()) {
      if (type != Written.Type.THOUSAND_TWENTY_FOURTH) {
        values.add(new Written(type, 1));
      }
      values.add(new Written(type, 0));
    }
    return List.copyOf(values);
  }

  /** The longest undotted value that is not longer than this; the shortest if all are. */
  static Written.Type notAbove(Time length) {
    for (Written.Type type : Written.Type.values()) {
      if (type.length().compareTo(length) <= 0) {
        return type;
      }
    }
    return Written.Type.THOUSAND_TWENTY_FOURTH;
  }

  /** True if this can be built of drawable values: a multiple of the shortest. */
  static boolean isWritable(Time length) {
    return Long.bitCount(length.den()) == 1 && length.den() <= SHORTEST.den();
  }
}
