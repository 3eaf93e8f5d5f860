package tabor.body;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.body.Loop.Hit;
import tabor.body.Loop.Instant;

/**
 * The best dealing of a loop, by dynamic programming over what the two limbs did last.
 *
 * <p>A loop has no beginning, so one is chosen: right after an instant that takes both limbs, where
 * few states are possible. A dealing of the loop is a way through the instants that ends in the
 * state it began with. One pass from all states at once gives, for each, a cost that no way back to
 * it can beat; then the states are tried one by one, the most promising first, until no bound is
 * below the best cost found. Each pass takes time in proportion to the number of instants.
 */
final class Deal {
  private final Pricing pricing;
  private final int count;
  private final List<List<Option>> options = new ArrayList<>();
  private final int first;

  private Deal(Loop loop) {
    this.pricing = new Pricing(loop);
    this.count = loop.instants.size();
    for (Instant instant : loop.instants) {
      options.add(Option.of(instant));
    }
    this.first = beginning();
  }

  /**
   * A dealing.
   *
   * @param cost in points
   * @param options the chosen option of each instant, in order of time
   */
  record Best(long cost, List<Option> options) {}

  /** The best dealing of a loop with at least one instant. */
  static Best of(Loop loop) {
    return new Deal(loop).best();
  }

  private Best best() {
    int[] states = beginnings();
    if (states.length == 1) {
      Pass only = new Pass(states, true);
      return only.way(states[0]);
    }
    Pass all = new Pass(states, true);
    long[] bounds = new long[states.length];
    Integer[] order = new Integer[states.length];
    for (int i = 0; i < states.length; i++) {
      bounds[i] = all.cost(states[i]);
      order[i] = i;
    }
    Arrays.sort(order, (a, b) -> Long.compare(bounds[a], bounds[b]));
    // Mostly the cheapest way to the most promising state also began there: then it is the loop.
    Best best = all.loop(states[order[0]], states);
    if (best != null) {
      return best;
    }
    for (int i : order) {
      if (bounds[i] == Long.MAX_VALUE || (best != null && bounds[i] >= best.cost())) {
        break;
      }
      Pass pass = new Pass(new int[] {states[i]}, true);
      if (best == null || pass.cost(states[i]) < best.cost()) {
        best = pass.way(states[i]);
      }
    }
    if (best == null) {
      throw new IllegalStateException("a loop of " + count + " instants has no dealing");
    }
    return best;
  }

  /** The instant to begin with: after the one that takes both limbs in the fewest ways. */
  private int beginning() {
    int best = -1;
    for (int i = 0; i < count; i++) {
      List<Option> here = options.get(i);
      if (here.stream().allMatch(Option::takesBoth)
          && (best < 0 || here.size() < options.get(best).size())) {
        best = i;
      }
    }
    return (best + 1) % count;
  }

  /** All states that may be there before the beginning. */
  private int[] beginnings() {
    Set<Integer> states = new LinkedHashSet<>();
    int before = Math.floorMod(first - 1, count);
    int[] right = earlier(before, true);
    int[] left = earlier(before, false);
    for (Option option : options.get(before)) {
      int r = after(option.right(), option.left());
      int l = after(option.left(), option.right());
      for (int rr : r == Last.NONE ? right : new int[] {r}) {
        for (int ll : l == Last.NONE ? left : new int[] {l}) {
          states.add(Last.pair(rr, ll));
        }
      }
    }
    return states.stream().mapToInt(Integer::intValue).toArray();
  }

  /** What the limb did last by this option itself; none if it did nothing. */
  static int after(@Nullable Hit own, @Nullable Hit other) {
    if (own != null) {
      return Last.now(own.id(), false);
    }
    return other != null && other.engages() ? Last.now(other.id(), true) : Last.NONE;
  }

  /** What a limb may have done last before instant {@code here}, seen from after it. */
  private int[] earlier(int here, boolean right) {
    Set<Integer> found = new LinkedHashSet<>();
    boolean forced = false;
    for (int back = 1; back < count && !forced; back++) {
      int j = Math.floorMod(here - back, count);
      boolean must = true;
      for (Option option : options.get(j)) {
        Hit own = right ? option.right() : option.left();
        int last = after(own, right ? option.left() : option.right());
        if (last == Last.NONE) {
          must = false;
        } else {
          int seen = last;
          for (int i = 1; i <= back && Last.isRecent(seen); i++) {
            seen = pricing.age(seen, (j + i) % count);
          }
          found.add(seen);
        }
      }
      forced = must;
    }
    if (!forced) {
      found.add(Last.NONE);
    }
    return found.stream().mapToInt(Integer::intValue).toArray();
  }

  /** One way round the loop from some states, all at no cost. */
  private final class Pass {
    private StateTable before = new StateTable();
    private StateTable now = new StateTable();
    private final @Nullable Trail trail;

    /**
     * Goes round.
     *
     * @param keep true if the way itself will be asked for
     */
    Pass(int[] beginnings, boolean keep) {
      trail = keep ? new Trail(count) : null;
      now.clear(beginnings.length);
      for (int state : beginnings) {
        now.offer(state, 0, 0, 0);
      }
      for (int step = 0; step < count; step++) {
        StateTable swap = before;
        before = now;
        now = swap;
        step((first + step) % count);
        if (trail != null) {
          trail.add(now);
        }
      }
    }

    private void step(int k) {
      List<Option> here = options.get(k);
      int size = before.size();
      now.clear(size * here.size());
      Pasts rights = new Pasts(size);
      Pasts lefts = new Pasts(size);
      for (int i = 0; i < size; i++) {
        rights.add(i, pricing.age(Last.right(before.state(i)), k));
        lefts.add(i, pricing.age(Last.left(before.state(i)), k));
      }
      OptionPrices[] prices = new OptionPrices[here.size()];
      for (int o = 0; o < prices.length; o++) {
        prices[o] = pricing.prices(k, here.get(o), rights, lefts);
      }
      for (int i = 0; i < size; i++) {
        int r = rights.of(i);
        int l = lefts.of(i);
        long cost = before.cost(i);
        for (int o = 0; o < prices.length; o++) {
          OptionPrices price = prices[o];
          now.offer(price.next(r, l), cost + price.of(r, l), i, o);
        }
      }
    }

    /** The cheapest way to a state, if that is where it began; else null. */
    @Nullable Best loop(int state, int[] beginnings) {
      int at = now.indexOf(state);
      if (at < 0 || trail == null) {
        return null;
      }
      int begun = at;
      for (int step = count - 1; step >= 0; step--) {
        begun = trail.origin(step, begun);
      }
      return beginnings[begun] == state ? way(state) : null;
    }

    /** The cost of ending in a state; the largest number if no way ends there. */
    long cost(int state) {
      int at = now.indexOf(state);
      return at < 0 ? Long.MAX_VALUE : now.cost(at);
    }

    /** The best way that ends in a state. */
    Best way(int state) {
      if (trail == null) {
        throw new IllegalStateException("the way was not kept");
      }
      int at = now.indexOf(state);
      long cost = now.cost(at);
      Option[] chosen = new Option[count];
      for (int step = count - 1; step >= 0; step--) {
        int k = (first + step) % count;
        chosen[k] = options.get(k).get(trail.option(step, at));
        at = trail.origin(step, at);
      }
      return new Best(cost, List.of(chosen));
    }
  }
}
