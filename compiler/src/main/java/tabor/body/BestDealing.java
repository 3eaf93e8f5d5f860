package tabor.body;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.body.Loop.Hit;
import tabor.body.Loop.Instant;
import tabor.kit.Limb;
import tabor.lists.Lists;

/**
 * The best dealing of a loop: a dynamic programme.
 *
 * <p><b>Stages</b> are the instants in order of time. A <b>choice</b> deals the open strokes of one
 * instant. The <b>state</b> is what each limb did last: on which surface, how many instants ago (up
 * to {@link LimbState#MEMORY}; then it has rested), and whether it kept the time or is in the
 * middle of a double. The <b>cost</b> of a choice, given the state, is the sum of {@link Weights}
 * that {@link Pricing} finds, and below all of those the number of strokes that change hands
 * against the section before.
 *
 * <p><b>Closing the loop.</b> A dealing must end in the state that it began with. The cut is made
 * after an instant that takes both limbs, where few states are possible; without one, a first round
 * from rest finds what states there are. One pass from all of them at no cost gives each a bound
 * that no way round to it can beat; mostly the best way already closes. Else the states are tried
 * one by one, the most promising first, until no bound is below the best cost found: the result is
 * exact.
 *
 * <p><b>Complexity.</b> One pass takes time in proportion to instants × states × choices. States
 * are at most some thirty and choices two, since an instant with three open strokes is an error; so
 * a pass is linear in the length of the section. In the worst case there is one pass for each state
 * at the cut.
 */
final class BestDealing {
  /** Changes of hands weigh less than the least of the weights, however many there are. */
  private static final int POINT = 20;

  private final Loop loop;
  private final Pricing pricing;
  private final int count;
  private final List<List<Choice>> choices = new ArrayList<>();
  private final int first;

  private BestDealing(Loop loop) {
    this.loop = loop;
    this.pricing = new Pricing(loop);
    this.count = loop.instants.size();
    for (Instant instant : loop.instants) {
      choices.add(Choice.of(instant));
    }
    this.first = (cut() + 1) % count;
  }

  /**
   * A dealing.
   *
   * @param cost points, and below them the number of changed hands, which only a search counts
   * @param choices the choice at each instant, in order of time
   */
  record Result(long cost, List<Choice> choices) {
    /** The points alone. */
    long points() {
      return cost >> POINT;
    }
  }

  /** The best dealing of a loop with at least one instant. */
  static Result of(Loop loop) {
    return new BestDealing(loop).best();
  }

  private Result best() {
    Result effortless = effortless();
    return effortless == null ? searched() : effortless;
  }

  /**
   * Every stroke to the limb that its part asks for, if that costs nothing: every other dealing
   * costs something.
   */
  private @Nullable Result effortless() {
    Choice[] chosen = new Choice[count];
    int right = LimbState.NEVER;
    int left = LimbState.NEVER;
    for (int round = 0; round < 3; round++) {
      for (int k = 0; k < count; k++) {
        right = pricing.age(right, k);
        left = pricing.age(left, k);
        if (round == 0) {
          chosen[k] = pricing.wished(choices.get(k));
        }
        Choice choice = chosen[k];
        if (choice == null || pricing.price(k, choice, right, left) > 0) {
          return null;
        }
        right = pricing.after(k, choice.right(), choice.left(), right);
        left = pricing.after(k, choice.left(), choice.right(), left);
      }
    }
    return new Result(0, Arrays.asList(chosen));
  }

  private Result searched() {
    long[] states = beginnings();
    Pass all = new Pass(states);
    long[] bounds = new long[states.length];
    Integer[] order = new Integer[states.length];
    for (int i = 0; i < states.length; i++) {
      bounds[i] = all.cost(states[i]);
      order[i] = i;
    }
    Arrays.sort(order, (a, b) -> Long.compare(bounds[a], bounds[b]));
    // Mostly the cheapest way to the most promising state also began there: then it is the loop.
    Result best = all.closed(states[order[0]]);
    for (int i = 0; best == null || (i < order.length && bounds[order[i]] < best.cost()); i++) {
      if (i == order.length || bounds[order[i]] == Long.MAX_VALUE) {
        throw new IllegalStateException("a loop of " + count + " instants has no dealing");
      }
      long state = states[order[i]];
      Pass pass = new Pass(new long[] {state});
      if (pass.cost(state) != Long.MAX_VALUE && (best == null || pass.cost(state) < best.cost())) {
        best = pass.way(state);
      }
    }
    return best;
  }

  /** The instant that takes both limbs in the fewest ways; the last one if none does. */
  private int cut() {
    int best = count - 1;
    boolean found = false;
    for (int i = 0; i < count; i++) {
      List<Choice> here = choices.get(i);
      if (Lists.all(here, Choice::takesBoth)
          && (!found || here.size() < choices.get(best).size())) {
        best = i;
        found = true;
      }
    }
    return best;
  }

  /** All states that may be there before the first instant, and maybe some that may not. */
  private long[] beginnings() {
    StateTable found = new StateTable();
    int before = Math.floorMod(first - 1, count);
    if (Lists.all(choices.get(before), Choice::takesBoth)) {
      found.clear(choices.get(before).size() * 4);
      for (Choice choice : choices.get(before)) {
        for (int right : both(before, choice.right(), choice.left())) {
          for (int left : both(before, choice.left(), choice.right())) {
            found.offer(LimbState.pair(right, left), 0, 0, 0);
          }
        }
      }
      return found.all();
    }
    // Two rounds, since in a short loop a limb's stroke may follow on itself.
    Pass round = new Pass(new long[] {LimbState.pair(LimbState.NEVER, LimbState.NEVER)});
    return new Pass(round.now.all()).now.all();
  }

  /** What a limb may have done last if it is needed at an instant: in a double, or not. */
  private int[] both(int k, @Nullable Hit own, @Nullable Hit other) {
    int rested = pricing.after(k, own, other, LimbState.NEVER);
    return own == null ? new int[] {rested} : new int[] {rested, LimbState.inDouble(rested)};
  }

  private long changes(Choice choice) {
    return changes(choice.right(), loop.limb(true)) + changes(choice.left(), loop.limb(false));
  }

  private static long changes(@Nullable Hit hit, Limb limb) {
    return hit != null && hit.before() != null && hit.before() != limb ? 1 : 0;
  }

  /** One way round the loop from some states, all at no cost. */
  private final class Pass {
    private final long[] beginnings;
    private final Backpointers back = new Backpointers(count);
    private StateTable before = new StateTable();
    private StateTable now = new StateTable();

    Pass(long[] beginnings) {
      this.beginnings = beginnings;
      now.clear(beginnings.length);
      for (long state : beginnings) {
        now.offer(state, 0, 0, 0);
      }
      for (int step = 0; step < count; step++) {
        StateTable swap = before;
        before = now;
        now = swap;
        step((first + step) % count);
        back.add(now);
      }
    }

    private void step(int k) {
      List<Choice> here = choices.get(k);
      int size = before.size();
      now.clear(size * here.size());
      for (int i = 0; i < size; i++) {
        long state = before.state(i);
        int right = pricing.age(LimbState.right(state), k);
        int left = pricing.age(LimbState.left(state), k);
        for (int c = 0; c < here.size(); c++) {
          Choice choice = here.get(c);
          long price = (pricing.price(k, choice, right, left) << POINT) + changes(choice);
          int nextRight = pricing.after(k, choice.right(), choice.left(), right);
          int nextLeft = pricing.after(k, choice.left(), choice.right(), left);
          now.offer(LimbState.pair(nextRight, nextLeft), before.cost(i) + price, i, c);
        }
      }
    }

    /** The cheapest way to a state, if that is where it began; else null. */
    @Nullable Result closed(long state) {
      int at = now.indexOf(state);
      if (at < 0) {
        return null;
      }
      for (int step = count - 1; step >= 0; step--) {
        at = back.origin(step, at);
      }
      return beginnings[at] == state ? way(state) : null;
    }

    /** The cost of ending in a state; the largest number if no way ends there. */
    long cost(long state) {
      int at = now.indexOf(state);
      return at < 0 ? Long.MAX_VALUE : now.cost(at);
    }

    /** The best way that ends in a state. */
    Result way(long state) {
      int at = now.indexOf(state);
      long cost = now.cost(at);
      Choice[] chosen = new Choice[count];
      for (int step = count - 1; step >= 0; step--) {
        int k = (first + step) % count;
        chosen[k] = choices.get(k).get(back.choice(step, at));
        at = back.origin(step, at);
      }
      return new Result(cost, List.of(chosen));
    }
  }
}
