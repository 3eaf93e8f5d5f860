package tabor.body;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.body.Loop.Hit;
import tabor.body.Loop.Instant;
import tabor.kit.Surface;

/** Prices one instant of a loop by {@link Weights}, given what each limb did last. */
final class Pricing {
  /** Nobody was given this surface yet. */
  private static final int NO_HABIT = 2;

  private final Loop loop;
  private final boolean rolls;
  private final long[] at;

  /** By number of the stroke: what it costs each limb, whatever else it does. */
  private final long[] byRight;

  private final long[] byLeft;
  private final boolean[] time;
  private final boolean[] alone;

  /** By surfaces: points for a way of one tick; longer times share them out. */
  private final long[][] way;

  private final boolean[][] crossed;
  private final int[] x;
  private final int[] piece;
  private final boolean[] snare;

  private final long slow;
  private final long bursting;
  private final long soon;
  private final long rest;

  Pricing(Loop loop) {
    this.loop = loop;
    int surfaces = loop.surfaces.size();
    this.way = new long[surfaces][surfaces];
    this.crossed = new boolean[surfaces][surfaces];
    this.x = new int[surfaces];
    this.piece = new int[surfaces];
    this.snare = new boolean[surfaces];
    for (int i = 0; i < surfaces; i++) {
      surface(i);
    }
    this.at = new long[loop.instants.size()];
    for (int i = 0; i < at.length; i++) {
      at[i] = loop.instants.get(i).at;
    }
    int hits = loop.hits.size();
    this.byRight = new long[hits];
    this.byLeft = new long[hits];
    this.alone = new boolean[hits];
    Roles.Read roles = Roles.of(loop);
    this.time = roles.time();
    this.rolls = wishes(roles);
    this.slow = loop.ticks(Weights.SLOW) + TimeRows.CLOSE;
    this.bursting = loop.ticks(Weights.BURSTING);
    this.soon = loop.ticks(Weights.SOON);
    this.rest = loop.ticks(Weights.RESTED);
  }

  private void surface(int i) {
    Surface a = loop.surfaces.get(i);
    x[i] = loop.places.of(a).x();
    snare[i] = a.sort() == Surface.Sort.SNARE;
    piece[i] = i;
    for (int j = 0; j < loop.surfaces.size(); j++) {
      Surface b = loop.surfaces.get(j);
      if (j < i && b.piece().equals(a.piece())) {
        piece[i] = piece[j];
      }
      if (loop.hands) {
        double points = loop.places.distance(a, b) / Weights.CENTIMETRES_PER_SECOND_A_POINT;
        way[i][j] = Math.round(points * loop.second);
        crossed[i][j] = loop.places.crosses(a, b);
      }
    }
  }

  /** Fills in what single strokes cost; true if any of them is rolled. */
  private boolean wishes(Roles.Read roles) {
    int[] habit = new int[loop.surfaces.size()];
    Arrays.fill(habit, NO_HABIT);
    boolean anyRoll = false;
    for (Hit hit : loop.hits) {
      anyRoll |= hit.end() > hit.at();
      if (!hit.isOpen()) {
        int side = hit.given() ? 1 : -1;
        int before = habit[hit.id()];
        habit[hit.id()] = before == NO_HABIT || before == side ? side : 0;
      }
    }
    for (Hit hit : loop.hits) {
      if (hit.isOpen()) {
        int i = hit.number();
        LimbWish wish = roles.wishes().get(i);
        int other = habit[hit.id()];
        byRight[i] = wish.cost(true) + (other == -1 ? Weights.AGAINST_THE_WRITER : 0);
        byLeft[i] = wish.cost(false) + (other == 1 ? Weights.AGAINST_THE_WRITER : 0);
        alone[i] = wish.reason() == LimbWish.Reason.ALONE;
      }
    }
    return anyRoll;
  }

  /** What a limb did last, seen from instant {@code k}: one further back, or rested. */
  int age(int state, int k) {
    if (!LimbState.isRecent(state)) {
      return state;
    }
    int older = LimbState.older(state);
    int age = LimbState.age(older);
    long gap = gap(k, older);
    boolean remembered = age <= LimbState.MEMORY && gap < rest;
    if (!remembered && !(age <= LimbState.FURTHEST && busyUntil(older, k) > at[k])) {
      return LimbState.rested(LimbState.surface(state));
    }
    // After so long no stroke is a third in a row: fewer states to tell apart.
    return gap < slow ? older : LimbState.fresh(older);
  }

  /** What a limb did last after instant {@code k}, if it was {@code state} before. */
  int after(int k, @Nullable Hit own, @Nullable Hit other, int state) {
    if (own != null) {
      int run = LimbState.isRecent(state) && gap(k, state) < slow ? 1 : 0;
      return LimbState.struck(own.id(), time[own.number()], run);
    }
    return other != null && other.engages() ? LimbState.helped(other.id()) : state;
  }

  /**
   * What it costs to deal instant {@code k} in one way.
   *
   * @param right what the right limb did last, seen from {@code k}
   * @param left what the left limb did last, seen from {@code k}
   */
  long price(int k, Choice choice, int right, int left) {
    Hit r = choice.right();
    Hit l = choice.left();
    long cost = 0;
    if (r != null && l != null) {
      cost += together(r, l);
    }
    if (r != null) {
      cost += strike(k, r, true, right, left);
    } else if (l != null) {
      cost += idle(k, l, right, true);
    }
    if (l != null) {
      cost += strike(k, l, false, left, right);
    } else if (r != null) {
      cost += idle(k, r, left, false);
    }
    return cost;
  }

  /** The choice that costs nothing by itself; null if there is none. */
  @Nullable Choice wished(List<Choice> choices) {
    for (Choice choice : choices) {
      Hit r = choice.right();
      Hit l = choice.left();
      if (choice.undealt() == 0
          && (r == null || byRight[r.number()] == 0)
          && (l == null || byLeft[l.number()] == 0)) {
        return choice;
      }
    }
    return null;
  }

  private long together(Hit r, Hit l) {
    boolean partners = r.openRoll() && l.openRoll() && r.id() == l.id();
    long cost = (r.engages() || l.engages()) && !partners ? Weights.BUSY : 0;
    if (!loop.hands) {
      return cost;
    }
    if (crossed[r.id()][l.id()]) {
      cost += Weights.CROSSED;
    } else if (x[r.id()] < x[l.id()]) {
      cost += Weights.RIGHT_ON_THE_LEFT;
    }
    return cost + (snare[r.id()] && !snare[l.id()] ? Weights.SNARE_NOT_LEFT : 0);
  }

  /** A stroke, by what its own limb did last and what the other did. */
  private long strike(int k, Hit hit, boolean right, int own, int other) {
    long cost = 0;
    if (own != LimbState.NEVER) {
      boolean recent = LimbState.isRecent(own);
      cost += way(k, hit, own);
      if (recent) {
        cost += again(k, hit, own);
        cost += busyUntil(own, k) > at[k] ? Weights.BUSY : 0;
      }
    }
    if (time[hit.number()]
        && keptTimeOn(hit, other)
        && !(keptTimeOn(hit, own) && LimbState.age(own) <= LimbState.age(other))) {
      cost += Weights.TIME_CHANGES_HANDS;
    }
    cost += right ? byRight[hit.number()] : byLeft[hit.number()];
    if (alone[hit.number()]
        && other != LimbState.NEVER
        && LimbState.surface(other) == hit.id()
        && (own == LimbState.NEVER || LimbState.surface(own) != hit.id())) {
      cost += Weights.NOT_AT_HOME;
    }
    return cost;
  }

  /** True if a limb's last stroke kept the time on the piece of this one. */
  private boolean keptTimeOn(Hit hit, int state) {
    return LimbState.keptTime(state) && piece[LimbState.surface(state)] == piece[hit.id()];
  }

  private long again(int k, Hit hit, int own) {
    long gap = gap(k, own);
    if (gap >= slow || !loop.hands) {
      return 0; // feet have their own pedals, and what is too quick for one is a row
    }
    boolean steady = time[hit.number()] && LimbState.keptTime(own);
    // However fast a row is, the same hand going on is never the cheaper way out.
    long cost = gap < bursting ? Weights.BURST * (bursting - gap) / gap : 0;
    return steady ? cost : cost + Weights.DOUBLE + LimbState.run(own) * Weights.THIRD;
  }

  private long way(int k, Hit hit, int own) {
    long points = way[LimbState.surface(own)][hit.id()];
    if (points == 0) {
      return 0;
    }
    boolean recent = LimbState.isRecent(own);
    return points / (recent ? Math.min(rest, gap(k, own)) : rest);
  }

  /** A limb that does not strike: what it costs that the other does, by what this one did last. */
  private long idle(int k, Hit hit, int state, boolean right) {
    if (state == LimbState.NEVER) {
      return 0;
    }
    long cost = 0;
    boolean recent = LimbState.isRecent(state);
    if (hit.engages()) {
      cost += way(k, hit, state);
      cost += recent && busyUntil(state, k) > at[k] ? Weights.BUSY : 0;
    }
    if (recent && gap(k, state) <= soon) {
      int id = LimbState.surface(state);
      boolean crosses = right ? crossed[id][hit.id()] : crossed[hit.id()][id];
      cost += crosses ? Weights.CROSSED_SOON : 0;
    }
    return cost;
  }

  private long gap(int k, int state) {
    int j = k - LimbState.age(state);
    if (j >= 0) {
      return at[k] - at[j];
    }
    int count = at.length;
    return at[k] - at[Math.floorMod(j, count)] - Math.floorDiv(j, count) * loop.length;
  }

  /** Until when a roll keeps the limb busy, in this round of the loop. */
  private long busyUntil(int state, int k) {
    if (!rolls || k < LimbState.age(state)) {
      return Long.MIN_VALUE;
    }
    Instant then = loop.instants.get(k - LimbState.age(state));
    boolean helped = LimbState.isHelp(state);
    int id = LimbState.surface(state);
    long until = Math.max(busy(then.right, id, helped), busy(then.left, id, helped));
    for (Hit hit : then.open) {
      until = Math.max(until, busy(hit, id, helped));
    }
    return until;
  }

  private static long busy(@Nullable Hit hit, int id, boolean helped) {
    return hit == null || hit.id() != id || (helped && !hit.openRoll())
        ? Long.MIN_VALUE
        : hit.end();
  }
}
