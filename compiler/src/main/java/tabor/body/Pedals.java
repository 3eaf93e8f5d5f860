package tabor.body;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.body.Loop.Hit;
import tabor.body.Loop.Instant;
import tabor.kit.Surface;

/**
 * Deals the feet without a search where it can be proved that every kick belongs to the right foot
 * and every stroke on the hi-hat's pedal to the left.
 *
 * <p>The proof: give any run of neighbouring strokes of one foot to the other instead. Each of them
 * pays for the wrong pedal. Within the run the other foot repeats at the same distances, so all
 * that can be spared is what the first foot pays before and after the run, less what it pays for
 * the gap that is left. Strokes put among the other foot's own never make those cheaper. Where no
 * single stroke spares more than it pays, and no end of a run more than half of what two pay, no
 * dealing costs less.
 */
final class Pedals {
  private final List<Option> options = new ArrayList<>();
  private final Side right;
  private final Side left;

  private Pedals(int instants) {
    right = new Side(instants);
    left = new Side(instants);
  }

  /** The best dealing of a loop of the feet, or null where it has to be searched for. */
  static @Nullable List<Option> settle(Loop loop) {
    Pedals pedals = new Pedals(loop.instants.size());
    for (Instant instant : loop.instants) {
      if (!pedals.add(instant)) {
        return null;
      }
    }
    return pedals.isBest(loop) ? pedals.options : null;
  }

  private static boolean isKick(Hit hit) {
    return hit.surface().sort() == Surface.Sort.KICK;
  }

  private static boolean isPlain(Instant instant, @Nullable Hit hit, boolean kick) {
    return hit == null
        || (isKick(hit) == kick && !hit.engages() && !hit.alternating() && hit.end() <= instant.at);
  }

  private boolean add(Instant instant) {
    Hit r = instant.right;
    Hit l = instant.left;
    for (Hit hit : instant.open) {
      if (isKick(hit)) {
        if (r != null) {
          return false;
        }
        r = hit;
      } else {
        if (l != null) {
          return false;
        }
        l = hit;
      }
    }
    if (!isPlain(instant, r, true) || !isPlain(instant, l, false)) {
      return false;
    }
    if (r != null) {
      right.add(instant.at, options.size());
    }
    if (l != null) {
      left.add(instant.at, options.size());
    }
    options.add(new Option(r, l, 0));
    return true;
  }

  private boolean isBest(Loop loop) {
    int r = 0;
    int l = 0;
    for (Option option : options) {
      Hit kick = option.right();
      if (kick != null && !keeps(loop, right, r++, kick)) {
        return false;
      }
      Hit hat = option.left();
      if (hat != null && !keeps(loop, left, l++, hat)) {
        return false;
      }
    }
    return true;
  }

  /** True if no other dealing can gain by giving this stroke away, alone or in a run. */
  private static boolean keeps(Loop loop, Side side, int index, Hit hit) {
    if (hit.open() < 0) {
      return true;
    }
    long extra = isKick(hit) ? 0 : MOST_EXTRA;
    long before = side.repeat(index, 1, loop.length);
    long after = side.repeat(index + 1, 1, loop.length);
    long left = side.repeat(index + 1, 2, loop.length);
    // Among equals the right foot goes first: a kick stays with it, a pedal stroke must be dearer.
    long most = Costs.WRONG_PEDAL - (isKick(hit) ? 0 : 1);
    return before + after - left + extra <= most && Math.max(before, after) + extra <= most;
  }

  /** Most that a stroke of the left foot pays for its place in the bar. */
  private static final long MOST_EXTRA = Costs.LEFT_ON_BEAT + Costs.LEFT_ON_BAR + Costs.LEFT_BEGINS;

  /** The strokes of one foot. */
  private static final class Side {
    private final List<Long> places = new ArrayList<>();
    private final List<Integer> instants = new ArrayList<>();
    private final int all;

    Side(int all) {
      this.all = all;
    }

    void add(long place, int instant) {
      places.add(place);
      instants.add(instant);
    }

    /** What stroke {@code to} pays for following the one {@code back} before it round the loop. */
    long repeat(int to, int back, long length) {
      int count = places.size();
      int from = to - back;
      int start = Math.floorMod(from, count);
      int end = Math.floorMod(to, count);
      long rounds = Math.floorDiv(to, count) - (long) Math.floorDiv(from, count);
      long age = instants.get(end) - instants.get(start) + rounds * all;
      if (age > Costs.MEMORY) {
        return 0;
      }
      long gap = places.get(end) - places.get(start) + rounds * length;
      return Costs.repeat(gap, rounds > 0);
    }
  }
}
