package tabor.body;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.body.Loop.Hit;
import tabor.body.Loop.Instant;
import tabor.kit.Surface;

/**
 * Deals the feet without a search where it can be proved that every kick belongs to the right foot
 * and every stroke on the hi-hat's pedal to the left: a foot on the wrong pedal costs more than all
 * that the other foot could be spared by it.
 */
final class Pedals {
  private final List<Option> options = new ArrayList<>();
  private final List<Long> right = new ArrayList<>();
  private final List<Long> left = new ArrayList<>();

  private Pedals() {}

  /** The best dealing of a loop of the feet, or null where it has to be searched for. */
  static @Nullable List<Option> settle(Loop loop) {
    Pedals pedals = new Pedals();
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
      right.add(instant.at);
    }
    if (l != null) {
      left.add(instant.at);
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

  /** True if no other dealing can gain by giving this stroke away. */
  private static boolean keeps(Loop loop, List<Long> places, int index, Hit hit) {
    if (hit.open() < 0) {
      return true;
    }
    int count = places.size();
    long here = places.get(index);
    long before =
        index > 0 ? here - places.get(index - 1) : here - places.get(count - 1) + loop.length;
    long after =
        index + 1 < count ? places.get(index + 1) - here : places.get(0) + loop.length - here;
    long spared = Costs.repeat(before, false) + Costs.repeat(after, false);
    return spared + hit.strong() + Costs.LEFT_BEGINS < Costs.WRONG_PEDAL;
  }
}
