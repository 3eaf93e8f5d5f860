package tabor.body;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.body.RudimentFinder.Hit;
import tabor.lists.Lists;
import tabor.rhythm.Time;

/** Lays the shapes of all rudiments over a row of strokes. */
final class RudimentMatcher {
  private final List<Hit> hits;

  /** From each stroke to the next, round the loop. */
  private final Time[] gaps;

  /** How many of the strokes before each are on drums. */
  private final int[] drums;

  /**
   * A matcher for the strokes of a loop.
   *
   * @param hits the strokes in order of time, at least one
   * @param length length of the loop in whole notes
   */
  RudimentMatcher(List<Hit> hits, Time length) {
    this.hits = hits;
    this.gaps = new Time[hits.size()];
    for (int i = 0; i < gaps.length; i++) {
      Time next = i + 1 < gaps.length ? hits.get(i + 1).at() : hits.get(0).at().plus(length);
      gaps[i] = next.minus(hits.get(i).at());
    }
    this.drums = new int[hits.size() + 1];
    for (int i = 0; i < hits.size(); i++) {
      drums[i + 1] = drums[i] + (hits.get(i).onDrum() ? 1 : 0);
    }
  }

  /**
   * A shape found.
   *
   * @param from number of its first stroke
   * @param count how many strokes, whole cycles
   */
  record Match(RudimentShape shape, int from, int count) {}

  /** The rudiment that the whole loop consists of from its start on; null if there is none. */
  @Nullable Match throughout() {
    boolean drums = Lists.all(hits, Hit::onDrum);
    for (RudimentShape shape : RudimentShape.ALL) {
      int size = shape.strokes().size();
      boolean plays =
          hits.size() % size == 0
              && !shape.alone()
              && hits.size() >= shape.least()
              // Between drums and cymbals only a pattern of doubles and singles is heard as one.
              && (drums || (shape.places() > 3 && hits.size() >= 2 * size));
      if (plays && (fits(shape, 0, false) || fits(shape, 0, true))) {
        return new Match(shape, 0, hits.size());
      }
    }
    return null;
  }

  /** True if the shape goes round the whole loop and ends where it can start again. */
  private boolean fits(RudimentShape shape, int from, boolean mirrored) {
    int size = shape.strokes().size();
    int cycles = hits.size() / size;
    if (shape.alternates() && cycles % 2 == 1 && cycles > 1) {
      return false;
    }
    return run(shape, from, mirrored, hits.size(), true) == hits.size();
  }

  /**
   * The matches that name the most strokes, none overlapping, in order; the fewest of equals. One
   * cycle that might be part of something else needs a border on both sides: a rest, another
   * rudiment, or the end of the section.
   */
  List<Match> best() {
    int n = hits.size();
    // By stroke: what is to be had from there on if a name must begin here, if what comes before
    // has one, and if it has none.
    long[] begun = new long[n + 1];
    long[] named = new long[n + 1];
    long[] plain = new long[n + 1];
    Match[] begins = new Match[n];
    boolean[] goesOn = new boolean[n];
    Match[] beginsAlone = new Match[n];
    boolean[] goesOnAlone = new boolean[n];
    Arrays.fill(begun, Long.MIN_VALUE / 2);
    Rolls rolls = new Rolls();
    for (int i = n - 1; i >= 0; i--) {
      plain[i] = plain[i + 1];
      for (RudimentShape shape : RudimentShape.ALL) {
        for (boolean mirrored : new boolean[] {false, true}) {
          int most =
              shape.rolls() ? rolls.run(shape, i, mirrored) : run(shape, i, mirrored, n - i, false);
          if (!hit(i).onDrum()) {
            continue;
          }
          for (int count : counts(shape, i, most, begins)) {
            if (count < shape.least()
                || !onDrums(i, count)
                || (shape.alone() && !rests(i, count))
                || isChance(shape, i)
                || isPartOfRoll(shape, i, count)) {
              continue;
            }
            boolean ends = endsClearly(shape, i, count);
            long with = count * 64L - 1 + (ends ? named[i + count] : begun[i + count]);
            if (with >= begun[i]) {
              begun[i] = with;
              begins[i] = new Match(shape, i, count);
              goesOn[i] = !ends;
            }
            if (beginsClearly(shape, i, count) && with >= plain[i]) {
              plain[i] = with;
              beginsAlone[i] = new Match(shape, i, count);
              goesOnAlone[i] = !ends;
            }
          }
        }
      }
      named[i] = Math.max(begun[i], plain[i + 1]);
    }
    List<Match> found = new ArrayList<>();
    boolean after = true;
    boolean must = false;
    int i = 0;
    while (i < n) {
      Match match =
          must || (after && begun[i] >= plain[i + 1]) ? begins[i] : after ? null : beginsAlone[i];
      if (match == null) {
        after = false;
        i++;
      } else {
        must = after ? goesOn[i] : goesOnAlone[i];
        found.add(match);
        i += match.count();
        after = true;
      }
    }
    return found;
  }

  /**
   * How many strokes of a shape may be named: all that follow it, and of a roll also those before
   * the beat on which something else begins. The last strokes of a roll are often the first of what
   * comes next.
   */
  private List<Integer> counts(RudimentShape shape, int from, int most, @Nullable Match[] begins) {
    int size = shape.strokes().size();
    List<Integer> counts = new ArrayList<>(1);
    counts.add(most);
    int least = Math.max(shape.least(), most - RudimentShape.LONGEST);
    for (int count = most - size; shape.rolls() && count >= least; count -= size) {
      Match next = begins[from + count];
      if (next != null && !next.shape().rolls() && hit(from + count).onBeat()) {
        counts.add(count);
      }
    }
    return counts;
  }

  private boolean onDrums(int from, int count) {
    return drums[from + count] - drums[from] == count;
  }

  /**
   * How many strokes of each roll follow from a stroke on, worked out from the last stroke back: as
   * {@link #run} says, but in proportion to the strokes where a whole section is one roll.
   */
  private final class Rolls {
    private final Map<RudimentShape, int[][]> counts = new IdentityHashMap<>();

    /** To be asked of every stroke, from the last one on. */
    int run(RudimentShape shape, int from, boolean mirrored) {
      int size = shape.strokes().size();
      int[][] known = counts.computeIfAbsent(shape, s -> new int[2][hits.size() + size + 1]);
      int count = 0;
      if (from + size <= hits.size() && cycle(shape, from, mirrored)) {
        int more = known[mirrored == shape.alternates() ? 0 : 1][from + size];
        boolean on = more > 0 && follows(shape, from + size) && sameSpeed(from, size, size);
        // A roll of single strokes is known to change its speed one stroke later.
        boolean steady = size > 1 || gap(from + 1).equals(gap(from));
        count = size + (on ? (steady ? more : Math.min(more, size)) : 0);
      }
      known[mirrored ? 1 : 0][from] = count;
      return count;
    }
  }

  /** Plain strokes that start off the beat: their letters may be there by chance. */
  private boolean isChance(RudimentShape shape, int from) {
    return isEven(shape, from) && !hit(from).onBeat();
  }

  /** Doubles that go on before or after at their speed belong to a longer roll. */
  private boolean isPartOfRoll(RudimentShape shape, int from, int count) {
    if (shape.strokes().size() == shape.places() || isEven(shape, from)) {
      return false;
    }
    Time place = place(shape, from);
    boolean before = from > 0 && gap(from - 1).before(place);
    return before || (from + count < hits.size() && gap(from + count - 1).before(place));
  }

  /** True for what is itself wherever it stands: one stroke, a roll with its doubles. */
  private boolean needsNoBorder(RudimentShape shape, int from) {
    boolean doubles = shape.strokes().size() != shape.places() && !isEven(shape, from);
    return shape.places() == 1 || shape.alone() || doubles;
  }

  /** True for strokes without grace notes whose doubles, if any, are no faster than the rest. */
  private boolean isEven(RudimentShape shape, int from) {
    List<RudimentShape.Beat> strokes = shape.strokes();
    boolean even = Lists.all(strokes, beat -> beat.small() == 0);
    for (int i = 1; i + 1 < strokes.size() && strokes.size() != shape.places(); i++) {
      even &= gap(from + i).equals(gap(from));
    }
    return even;
  }

  private boolean beginsClearly(RudimentShape shape, int from, int count) {
    boolean cycles = count > shape.strokes().size();
    return needsNoBorder(shape, from)
        || from == 0
        || (cycles && hit(from).onBeat())
        || place(shape, from).before(gap(from - 1));
  }

  private boolean endsClearly(RudimentShape shape, int from, int count) {
    int next = from + count;
    Time place = place(shape, from);
    return needsNoBorder(shape, from)
        || next == hits.size()
        || count > shape.strokes().size()
        || place.before(gap(next - 1))
        || (hit(next).onBeat() && place.before(gap(next)));
  }

  /** How many strokes from {@code from} on follow the shape, in whole cycles. */
  private int run(RudimentShape shape, int from, boolean mirrored, int most, boolean round) {
    int size = shape.strokes().size();
    int count = 0;
    boolean other = mirrored;
    while (count + size <= most && cycle(shape, from + count, other)) {
      if (count > 0 && !follows(shape, from + count)) {
        break;
      }
      if (count > 0 && shape.rolls() && !sameSpeed(from, count, size)) {
        break;
      }
      count += size;
      other ^= shape.alternates();
      if (shape.alone()) {
        break;
      }
    }
    return round && !follows(shape, from + count) ? 0 : count;
  }

  /** True if a roll's next stroke, or both of its next double, come as fast as its first ones. */
  private boolean sameSpeed(int from, int count, int size) {
    Time fast = gap(from);
    return gap(from + count - 1).equals(fast) && (size == 1 || gap(from + count).equals(fast));
  }

  /** The gap before a next cycle: at least a place, at most four. */
  private boolean follows(RudimentShape shape, int next) {
    Time place = place(shape, next - shape.strokes().size());
    Time gap = gap(next - 1);
    RudimentShape.Beat last = shape.strokes().get(shape.strokes().size() - 1);
    Time due = last.half() % 2 == 1 ? place.over(2) : place;
    boolean release = last.half() % 2 == 0 && shape.strokes().size() != shape.places();
    return release
        ? gap.compareTo(due) >= 0 && gap.compareTo(due.times(4)) <= 0
        : shape.places() == 1 || !shape.even() || gap.equals(due) || isRelease(shape, gap, due);
  }

  /** Shapes with grace notes may rest after their last place. */
  private static boolean isRelease(RudimentShape shape, Time gap, Time due) {
    boolean small = Lists.any(shape.strokes(), beat -> beat.small() > 0);
    return small && gap.compareTo(due) >= 0 && gap.compareTo(due.times(4)) <= 0;
  }

  private boolean cycle(RudimentShape shape, int from, boolean mirrored) {
    List<RudimentShape.Beat> strokes = shape.strokes();
    // The letters first: most shapes fail there, and lengths take longer to compare.
    for (int i = 0; i < strokes.size(); i++) {
      RudimentShape.Beat beat = strokes.get(i);
      Hit hit = hit(from + i);
      if (hit.right() == (beat.right() == mirrored)
          || hit.small() != beat.small()
          || hit.buzz() != beat.buzz()) {
        return false;
      }
    }
    Time place = place(shape, from);
    for (int i = 0; i + 1 < strokes.size(); i++) {
      int halves = strokes.get(i + 1).half() - strokes.get(i).half();
      Time gap = gap(from + i);
      boolean fits =
          shape.even()
              ? gap.equals(place.times(halves).over(2))
              : gap.compareTo(place.times(4)) <= 0;
      if (!fits) {
        return false;
      }
    }
    return shape.even() || evenDoubles(shape, from);
  }

  /** However long its places are, the doubles of a rudiment are equally fast, and fastest. */
  private boolean evenDoubles(RudimentShape shape, int from) {
    List<RudimentShape.Beat> strokes = shape.strokes();
    Time fast = null;
    Time slow = null;
    for (int i = 0; i + 1 < strokes.size(); i++) {
      Time gap = gap(from + i);
      if (strokes.get(i + 1).half() - strokes.get(i).half() == 1) {
        if (fast != null && !fast.equals(gap)) {
          return false;
        }
        fast = gap;
      } else {
        slow = slow == null ? gap : Time.min(slow, gap);
      }
    }
    return fast == null || slow == null || fast.compareTo(slow) <= 0;
  }

  /** How long a place is, judged by the first two strokes. */
  private Time place(RudimentShape shape, int from) {
    if (shape.strokes().size() == 1) {
      return gap(from);
    }
    int halves = shape.strokes().get(1).half() - shape.strokes().get(0).half();
    return gap(from).times(2).over(halves);
  }

  /** True if there is a rest of two places or more before and after. */
  private boolean rests(int from, int count) {
    Time two = gap(from).times(2);
    return gap(from - 1).compareTo(two) >= 0 && gap(from + count - 1).compareTo(two) >= 0;
  }

  private Hit hit(int index) {
    return hits.get(Math.floorMod(index, hits.size()));
  }

  /** From a stroke to the next, round the loop. */
  private Time gap(int index) {
    return gaps[Math.floorMod(index, gaps.length)];
  }
}
