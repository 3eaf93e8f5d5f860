package tabor.body;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import tabor.body.Loop.Hit;
import tabor.body.Loop.Instant;
import tabor.kit.Surface;

/** Prices one instant of a loop by {@link Weights}, given what each limb did last. */
final class Pricing {
  /** Nobody was given this surface yet. */
  private static final int NO_HABIT = 2;

  private final Loop loop;
  private final Roles.Read roles;
  private final boolean rolls;
  private final int[][] way;
  private final boolean[][] crossed;
  private final int[] x;
  private final int[] piece;
  private final boolean[] snare;

  /** By surface: 1 if the writer gives it to the right only, -1 to the left only. */
  private final int[] habit;

  private final long slow;
  private final long bursting;
  private final long soon;

  Pricing(Loop loop) {
    this.loop = loop;
    this.roles = Roles.of(loop);
    int surfaces = loop.surfaces.size();
    this.way = new int[surfaces][surfaces];
    this.crossed = new boolean[surfaces][surfaces];
    this.x = new int[surfaces];
    this.piece = new int[surfaces];
    this.snare = new boolean[surfaces];
    this.habit = new int[surfaces];
    Arrays.fill(habit, NO_HABIT);
    for (int i = 0; i < surfaces; i++) {
      Surface a = loop.surfaces.get(i);
      x[i] = loop.places.of(a).x();
      snare[i] = a.sort() == Surface.Sort.SNARE;
      piece[i] = i;
      for (int j = 0; j < surfaces; j++) {
        Surface b = loop.surfaces.get(j);
        if (j < i && piece[i] == i && b.piece().equals(a.piece())) {
          piece[i] = j;
        }
        way[i][j] = loop.hands ? loop.places.distance(a, b) : 0;
        crossed[i][j] = loop.hands && loop.places.crosses(a, b);
      }
    }
    boolean anyRoll = false;
    for (Hit hit : loop.hits) {
      anyRoll |= hit.end() > hit.at();
      if (!hit.isOpen()) {
        int side = hit.given() ? 1 : -1;
        int before = habit[hit.id()];
        habit[hit.id()] = before == NO_HABIT || before == side ? side : 0;
      }
    }
    this.rolls = anyRoll;
    this.slow = loop.ticks(Weights.SLOW) + TimeRows.CLOSE;
    this.bursting = loop.ticks(Weights.BURSTING);
    this.soon = loop.ticks(Weights.SOON);
  }

  /** What a limb did last, seen from instant {@code k}: one further back, or rested. */
  int age(int state, int k) {
    if (!LimbState.isRecent(state)) {
      return state;
    }
    int older = LimbState.older(state);
    int age = LimbState.age(older);
    return age <= LimbState.MEMORY
            || (age <= LimbState.FURTHEST && busyUntil(older, k) > loop.instants.get(k).at)
        ? older
        : LimbState.rested(LimbState.surface(state));
  }

  /** What a limb did last after instant {@code k}, if it was {@code state} before. */
  int after(int k, @Nullable Hit own, @Nullable Hit other, int state) {
    if (own != null) {
      int run = LimbState.isRecent(state) && gap(k, state) < slow ? 1 : 0;
      return LimbState.struck(own.id(), roles.time()[own.number()], run);
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
    long cost = choice.undealt() * Weights.NO_LIMB;
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
        cost += rolls && busyUntil(own, k) > loop.instants.get(k).at ? Weights.BUSY : 0;
      }
    }
    if (roles.time()[hit.number()]
        && keptTimeOn(hit, other)
        && !(keptTimeOn(hit, own) && LimbState.age(own) <= LimbState.age(other))) {
      cost += Weights.TIME_CHANGES_HANDS;
    }
    if (!hit.isOpen()) {
      return cost;
    }
    Wish wish = roles.wishes().get(hit.number());
    cost += wish.cost(right);
    cost += habit[hit.id()] == (right ? -1 : 1) ? Weights.AGAINST_THE_WRITER : 0;
    if (wish.reason() == Wish.Reason.ALONE
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
    if (gap >= slow) {
      return 0;
    }
    boolean time = roles.time()[hit.number()] && LimbState.keptTime(own);
    long cost = gap < bursting ? Weights.BURST : 0;
    return time ? cost : cost + Weights.DOUBLE + LimbState.run(own) * Weights.THIRD;
  }

  private long way(int k, Hit hit, int own) {
    int centimetres = way[LimbState.surface(own)][hit.id()];
    if (centimetres == 0) {
      return 0;
    }
    double rest = Weights.WAY_AT_REST;
    double seconds =
        LimbState.isRecent(own) ? Math.min(rest, Math.max(1, gap(k, own)) / loop.second) : rest;
    return (long) (centimetres / seconds / Weights.CENTIMETRES_PER_SECOND_A_POINT);
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
      cost += recent && busyUntil(state, k) > loop.instants.get(k).at ? Weights.BUSY : 0;
    }
    if (recent && gap(k, state) <= soon) {
      int id = LimbState.surface(state);
      boolean crosses = right ? crossed[id][hit.id()] : crossed[hit.id()][id];
      cost += crosses ? Weights.CROSSED_SOON : 0;
    }
    return cost;
  }

  private long gap(int k, int state) {
    int count = loop.instants.size();
    int j = k - LimbState.age(state);
    long at = loop.instants.get(k).at;
    return j >= 0
        ? at - loop.instants.get(j).at
        : at
            - loop.instants.get(Math.floorMod(j, count)).at
            - Math.floorDiv(j, count) * loop.length;
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
