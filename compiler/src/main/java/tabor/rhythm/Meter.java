package tabor.rhythm;

import java.util.ArrayList;
import java.util.List;
import tabor.lists.Lists;

/**
 * A time signature and what counts as a beat in it.
 *
 * @param count the upper number, 1 to 64
 * @param unit the lower number, a power of two from 1 to 64
 * @param beats the length of each beat of the bar in whole notes, in order; they fill the bar
 * @param groups how many beats each group has, in order, where the beats are grouped; they fill the
 *     bar; empty where they are not
 */
public record Meter(int count, int unit, List<Time> beats, List<Integer> groups) {
  /** Four quarters. */
  public static final Meter COMMON = of(4, 4);

  /** Throws {@link IllegalArgumentException} if beats or groups do not fill the bar. */
  public Meter {
    beats = List.copyOf(beats);
    groups = List.copyOf(groups);
    int grouped = 0;
    for (int group : groups) {
      grouped += group;
    }
    if (!groups.isEmpty() && grouped != beats.size()) {
      throw new IllegalArgumentException("groups do not fill " + count + "/" + unit);
    }
    Time sum = Time.ZERO;
    for (Time beat : beats) {
      sum = sum.plus(beat);
    }
    if (!sum.equals(Time.of(count, unit))) {
      throw new IllegalArgumentException("beats do not fill " + count + "/" + unit);
    }
  }

  /** A meter whose beats are not grouped. */
  public Meter(int count, int unit, List<Time> beats) {
    this(count, unit, beats, List.of());
  }

  /**
   * The meter with its usual beat: three units in 6, 9, 12, 15 over 8 or 16, else one unit (common
   * practice, no source).
   */
  public static Meter of(int count, int unit) {
    boolean dotted = count % 3 == 0 && count > 3 && count <= 15 && (unit == 8 || unit == 16);
    int size = dotted ? 3 : 1;
    List<Time> beats = new ArrayList<>();
    for (int i = 0; i < count / size; i++) {
      beats.add(Time.of(size, unit));
    }
    return new Meter(count, unit, beats);
  }

  /** Length of a bar in whole notes. */
  public Time bar() {
    return Time.of(count, unit);
  }

  /** Number of beats in a bar. */
  public int beatCount() {
    return beats.size();
  }

  /** Length of a 0-based beat in whole notes. */
  public Time beat(int index) {
    return beats.get(index);
  }

  /** Distance of a 0-based beat from the barline; {@code beatCount()} gives the bar's end. */
  public Time beatStart(int index) {
    Time sum = Time.ZERO;
    for (int i = 0; i < index; i++) {
      sum = sum.plus(beats.get(i));
    }
    return sum;
  }

  /** The 0-based beat that holds a place of the bar (0 or more, less than the bar). */
  public int beatAt(Time place) {
    Time end = Time.ZERO;
    for (int i = 0; i < beats.size(); i++) {
      end = end.plus(beats.get(i));
      if (place.before(end)) {
        return i;
      }
    }
    throw new IllegalArgumentException(place + " is outside a bar of " + this);
  }

  /** True if a beat of this length is a dotted note value. */
  public static boolean isDotted(Time beat) {
    return beat.num() == 3;
  }

  /** True if a beat of this length is a plain note value: a half, a quarter, an eighth … */
  public static boolean isPlain(Time beat) {
    return Long.bitCount(beat.num()) == 1 && Long.bitCount(beat.den()) == 1;
  }

  /** True if all beats are equally long. */
  public boolean isEven() {
    for (Time beat : beats) {
      if (!beat.equals(beats.get(0))) {
        return false;
      }
    }
    return true;
  }

  /** The beat that a bare tempo counts: the meter's own, over unequal beats the lower number. */
  public Time tempoBeat() {
    return isEven() ? beats.get(0) : Time.of(1, unit);
  }

  /** {@code 7/8}. */
  public String signature() {
    return count + "/" + unit;
  }

  /**
   * The upper number as it is printed: of groups and of unequal beats their sizes with plus signs,
   * {@code 2+2+3}.
   */
  public String upper() {
    if (isEven() && groups.isEmpty()) {
      return Integer.toString(count);
    }
    List<Time> lengths = beats;
    if (!groups.isEmpty()) {
      lengths = new ArrayList<>();
      int beat = 0;
      for (int group : groups) {
        lengths.add(beatStart(beat + group).minus(beatStart(beat)));
        beat += group;
      }
    }
    return String.join("+", Lists.map(lengths, length -> length.times(unit).toString()));
  }

  /** True if a bar of the other meter fits in a bar of this one: the same beats. */
  public boolean hasSameBeats(Meter other) {
    return count == other.count && unit == other.unit && beats.equals(other.beats);
  }

  /** The signature, and where it is not the usual one the beat: {@code 7/8 in 2+2+3}. */
  public String words() {
    if (!groups.isEmpty()) {
      return signature() + " grouped " + String.join("+", Lists.map(groups, String::valueOf));
    }
    if (beats.equals(of(count, unit).beats)) {
      return signature();
    }
    if (isEven()) {
      return signature() + " in " + beatCount();
    }
    List<String> units = new ArrayList<>();
    beats.forEach(beat -> units.add(beat.times(unit).toString()));
    return signature() + " in " + String.join("+", units);
  }

  @Override
  public String toString() {
    return signature();
  }
}
