package tabor.body;

import org.jspecify.annotations.Nullable;
import tabor.body.Loop.Hit;
import tabor.body.Loop.Instant;
import tabor.kit.Surface;

/** Prices one instant of a loop, given what each limb did last. */
final class Pricing {
  private final Loop loop;
  private final int count;
  private final boolean rolls;
  private final int firstOpen;
  private final int[][] way;
  private final boolean[][] crosses;
  private final boolean[] keepsTime;
  private final int[] piece;
  private final long[] at;

  /** By instant and age: the time since a stroke so long ago, and what repeating it costs. */
  private final long[] gaps;

  private final long[] repeats;

  Pricing(Loop loop) {
    this.loop = loop;
    this.count = loop.instants.size();
    int surfaces = loop.surfaces.size();
    this.way = new int[surfaces][surfaces];
    this.crosses = new boolean[surfaces][surfaces];
    this.keepsTime = new boolean[surfaces];
    this.piece = new int[surfaces];
    for (int i = 0; i < surfaces; i++) {
      Surface a = loop.surfaces.get(i);
      keepsTime[i] = Costs.keepsTime(a);
      piece[i] = i;
      for (int j = 0; j < surfaces; j++) {
        Surface b = loop.surfaces.get(j);
        if (j < i && piece[i] == i && b.piece().equals(a.piece())) {
          piece[i] = j;
        }
        way[i][j] = loop.hands ? loop.places.distance(a, b) : 0;
        crosses[i][j] = loop.hands && Costs.crosses(loop.places, a, b);
      }
    }
    boolean anyRoll = false;
    int first = -1;
    for (Instant instant : loop.instants) {
      anyRoll |= rolls(instant);
      if (first < 0 && !instant.open.isEmpty()) {
        first = instant.open.get(0).open();
      }
    }
    this.rolls = anyRoll;
    this.firstOpen = first;
    this.at = new long[count];
    for (int k = 0; k < count; k++) {
      at[k] = loop.instants.get(k).at;
    }
    this.gaps = new long[count * TABLED];
    this.repeats = new long[count * TABLED];
    for (int k = 0; k < count; k++) {
      for (int age = 1; age < TABLED; age++) {
        long gap = gapOf(k, age);
        gaps[k * TABLED + age] = gap;
        repeats[k * TABLED + age] = Costs.repeat(gap, k < age);
      }
    }
  }

  /** Ages that are looked up; older strokes are few, and only rolls remember them. */
  private static final int TABLED = Costs.MEMORY + 2;

  private long gapOf(int k, int age) {
    int j = k - age;
    return j >= 0
        ? at[k] - at[j]
        : at[k] - at[Math.floorMod(j, count)] - Math.floorDiv(j, count) * loop.length;
  }

  private static boolean rolls(Instant instant) {
    return isRoll(instant, instant.right)
        || isRoll(instant, instant.left)
        || instant.open.stream().anyMatch(hit -> isRoll(instant, hit));
  }

  private static boolean isRoll(Instant instant, @Nullable Hit hit) {
    return hit != null && hit.end() > instant.at;
  }

  /** What a limb did last, seen from instant {@code k}: one further back, or rested. */
  int age(int last, int k) {
    if (!Last.isRecent(last)) {
      return last;
    }
    int older = Last.back(last, 1);
    int age = Last.age(older);
    return age <= Costs.MEMORY || (age <= Last.FURTHEST && busyUntil(older, k) > at[k])
        ? older
        : Last.rested(Last.surface(last));
  }

  /**
   * What it costs to deal instant {@code k} by {@code option}.
   *
   * @param right what the right limb did last, seen from {@code k}
   * @param left what the left limb did last, seen from {@code k}
   */
  long price(int k, Option option, int right, int left) {
    Hit r = option.right();
    Hit l = option.left();
    long cost = option.undealt() * Costs.UNDEALT;
    if (r != null) {
      cost += strike(k, r, true, right, left);
    }
    if (l != null) {
      cost += strike(k, l, false, left, right);
    }
    if (r != null && l != null) {
      boolean partners = r.openRoll() && l.openRoll() && r.id() == l.id();
      cost += (r.engages() || l.engages()) && !partners ? Costs.CLASH : 0;
      cost += crosses[r.id()][l.id()] ? Costs.CROSSED : 0;
    } else if (r != null) {
      cost += r.engages() ? help(k, r, left) : 0;
      cost += soon(k, left) && crosses[r.id()][Last.surface(left)] ? Costs.CROSSED_SOON : 0;
    } else if (l != null) {
      cost += l.engages() ? help(k, l, right) : 0;
      cost += soon(k, right) && crosses[Last.surface(right)][l.id()] ? Costs.CROSSED_SOON : 0;
    }
    return cost;
  }

  private long strike(int k, Hit hit, boolean right, int own, int other) {
    long cost = hit.open() < 0 ? 0 : choice(hit, right);
    if (own != Last.NONE) {
      boolean recent = Last.isRecent(own);
      long gap = recent ? gap(k, own) : Costs.WHOLE;
      if (!hit.alternating()) {
        cost += Costs.way(way[Last.surface(own)][hit.id()], gap);
      }
      if (recent) {
        cost += again(k, hit, own, gap);
        cost += alternation(k, hit, own, other);
        cost += rolls && busyUntil(own, k) > at[k] ? Costs.CLASH : 0;
      }
    }
    return cost + change(hit, own, other);
  }

  /** What an open stroke costs this limb whatever came before. */
  private long choice(Hit hit, boolean right) {
    long cost = !right && hit.open() == firstOpen ? Costs.LEFT_BEGINS : 0;
    if (hit.alternating()) {
      return cost;
    }
    cost += loop.habit(hit.id(), right) + (right ? 0 : hit.strong());
    if (loop.hands) {
      return cost + (!right && keepsTime[hit.id()] ? Costs.LEFT_KEEPS_TIME : 0);
    }
    boolean kick = hit.surface().sort() == Surface.Sort.KICK;
    return cost + (kick != right ? Costs.WRONG_PEDAL : 0);
  }

  private long again(int k, Hit hit, int own, long gap) {
    if (hit.alternating()) {
      return 0;
    }
    if (keepsTime[hit.id()] && same(hit, own)) {
      return Costs.keepingTime(gap);
    }
    return repeat(k, own, gap);
  }

  private long alternation(int k, Hit hit, int own, int other) {
    boolean repeats = hit.alternating() && struckLast(own) && !struckLast(other);
    return !repeats ? 0 : wraps(k, own) ? Costs.NOT_ALTERNATING_AT_SEAM : Costs.NOT_ALTERNATING;
  }

  private static boolean struckLast(int last) {
    return last != Last.NONE && Last.age(last) == 1 && !Last.helped(last);
  }

  /** The other hand kept time on this piece until now. */
  private long change(Hit hit, int own, int other) {
    if (!loop.hands || !keepsTime[hit.id()] || !Last.isRecent(other) || !same(hit, other)) {
      return 0;
    }
    boolean ownToo = Last.isRecent(own) && same(hit, own) && Last.age(own) <= Last.age(other);
    return ownToo ? 0 : Costs.CHANGE_OF_HAND;
  }

  private boolean same(Hit hit, int last) {
    return piece[hit.id()] == piece[Last.surface(last)];
  }

  /** The other limb makes small strokes or rolls along. */
  private long help(int k, Hit hit, int helper) {
    if (helper == Last.NONE) {
      return 0;
    }
    boolean recent = Last.isRecent(helper);
    long gap = recent ? gap(k, helper) : Costs.WHOLE;
    return Costs.way(way[Last.surface(helper)][hit.id()], gap)
        + (recent && busyUntil(helper, k) > at[k] ? Costs.CLASH : 0);
  }

  private boolean soon(int k, int last) {
    return Last.isRecent(last) && Costs.isSoon(gap(k, last));
  }

  private boolean wraps(int k, int last) {
    return k < Last.age(last);
  }

  private long gap(int k, int last) {
    int age = Last.age(last);
    return age < TABLED ? gaps[k * TABLED + age] : gapOf(k, age);
  }

  private long repeat(int k, int last, long gap) {
    int age = Last.age(last);
    return age < TABLED ? repeats[k * TABLED + age] : Costs.repeat(gap, wraps(k, last));
  }

  /** Until when a roll keeps the limb busy, in this round of the loop. */
  private long busyUntil(int last, int k) {
    if (!rolls || wraps(k, last)) {
      return Long.MIN_VALUE;
    }
    Instant then = loop.instants.get(k - Last.age(last));
    long until = Long.MIN_VALUE;
    boolean helped = Last.helped(last);
    int id = Last.surface(last);
    until = Math.max(until, busy(then.right, id, helped));
    until = Math.max(until, busy(then.left, id, helped));
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
