package tabor.notation;

import java.util.ArrayList;
import java.util.List;
import tabor.rhythm.Time;

/**
 * A stretch whose places are strong or weak: a beat, several beats, or the inside of a tuplet. Says
 * which note values may stand where in it. All times are written ones, from the stretch's start.
 *
 * @param length of the stretch; its denominator is a power of two
 */
record Frame(Time length) {
  private static final int EDGE = -1;

  /**
   * How weak a place is: -1 at both ends, 0 where the stretch falls into its odd number of parts
   * (the eighths of a dotted quarter), one more for each halving.
   */
  private int level(Time place) {
    if (place.sign() == 0 || place.equals(length)) {
      return EDGE;
    }
    return Long.numberOfTrailingZeros(place.over(part()).den());
  }

  /** The stretch without its odd factor: an eighth of a dotted quarter. */
  private Time part() {
    long odd = length.num() >> Long.numberOfTrailingZeros(length.num());
    return length.over(odd);
  }

  /** The strongest level strictly between two places. */
  private int crossed(Time from, Time to) {
    Time step = part();
    for (int level = 0; ; level++) {
      Time next = step.times(from.over(step).floor() + 1);
      if (next.before(to)) {
        return level;
      }
      step = step.over(2);
    }
  }

  /**
   * True if one sign from here to there shows where it stands: what it hides is at most one level
   * stronger than the stronger of its ends.
   */
  private boolean isLegible(Time from, Time to) {
    int ends = Math.min(level(from), level(to));
    return ends == EDGE || crossed(from, to) >= ends - 1;
  }

  /**
   * The value of a note that starts here and may last so long: all of it where one sign can say so,
   * else what leaves the fewest rests, and of those what ends on the strongest place.
   */
  Written note(Time from, Time room) {
    Written best = null;
    int fewest = Integer.MAX_VALUE;
    int strength = Integer.MAX_VALUE;
    for (Written value : NoteValues.LONGEST_FIRST) {
      Time left = room.minus(value.length());
      if (left.sign() < 0) {
        continue;
      }
      Time to = from.plus(value.length());
      if (!isLegible(from, to)) {
        continue;
      }
      if (left.sign() == 0) {
        return value;
      }
      int signs = rests(to, left).size();
      int level = level(to);
      if (signs < fewest || (signs == fewest && level < strength)) {
        best = value;
        fewest = signs;
        strength = level;
      }
    }
    if (best == null) {
      throw new IllegalStateException("no value fits " + room);
    }
    return best;
  }

  /**
   * The rests that fill a gap: the longest that starts on a multiple of itself, dotted only at the
   * start of the stretch.
   */
  List<Written> rests(Time from, Time room) {
    List<Written> rests = new ArrayList<>();
    Time at = from;
    Time left = room;
    while (left.sign() > 0) {
      Written next = rest(at, left);
      rests.add(next);
      at = at.plus(next.length());
      left = left.minus(next.length());
    }
    return rests;
  }

  private static Written rest(Time at, Time left) {
    for (Written value : NoteValues.LONGEST_FIRST) {
      if (value.length().compareTo(left) <= 0
          && (value.dots() == 0 ? at.over(value.length()).isWhole() : at.sign() == 0)) {
        return value;
      }
    }
    throw new IllegalStateException("no rest fits " + left);
  }
}
