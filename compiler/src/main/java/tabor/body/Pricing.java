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
   * What it costs to deal instant {@code k} by {@code option}, from every state.
   *
   * @param rights what the right limb did last, seen from {@code k}
   * @param lefts what the left limb did last, seen from {@code k}
   */
  OptionPrices prices(int k, Option option, Pasts rights, Pasts lefts) {
    Hit r = option.right();
    Hit l = option.left();
    long both = option.undealt() * Costs.UNDEALT;
    if (r != null && l != null) {
      boolean partners = r.openRoll() && l.openRoll() && r.id() == l.id();
      both += (r.engages() || l.engages()) && !partners ? Costs.CLASH : 0;
      both += crosses[r.id()][l.id()] ? Costs.CROSSED : 0;
    }
    long[] right = new long[rights.size()];
    long[] left = new long[lefts.size()];
    int[] nextRight = new int[right.length];
    int[] nextLeft = new int[left.length];
    int afterRight = Deal.after(r, l);
    int afterLeft = Deal.after(l, r);
    for (int i = 0; i < right.length; i++) {
      int last = rights.last(i);
      right[i] =
          both + (r != null ? strike(k, r, true, last) : l == null ? 0 : idle(k, l, last, true));
      nextRight[i] = afterRight == Last.NONE ? last : afterRight;
    }
    for (int i = 0; i < left.length; i++) {
      int last = lefts.last(i);
      left[i] = l != null ? strike(k, l, false, last) : r == null ? 0 : idle(k, r, last, false);
      nextLeft[i] = afterLeft == Last.NONE ? last : afterLeft;
    }
    return new OptionPrices(
        right,
        left,
        nextRight,
        nextLeft,
        r == null ? null : pair(k, r, rights, lefts),
        l == null ? null : pair(k, l, lefts, rights));
  }

  /** The price from one state alone. */
  long price(int k, Option option, int right, int left) {
    Pasts rights = new Pasts(1);
    Pasts lefts = new Pasts(1);
    rights.add(0, right);
    lefts.add(0, left);
    return prices(k, option, rights, lefts).of(0, 0);
  }

  private OptionPrices.@Nullable Pair pair(int k, Hit hit, Pasts own, Pasts other) {
    boolean time = loop.hands && keepsTime[hit.id()];
    return time || hit.alternating() ? new OptionPrices.Pair(hit, time, this, k, own, other) : null;
  }

  /** A stroke, by what its own limb did last. */
  private long strike(int k, Hit hit, boolean right, int own) {
    long cost = hit.open() < 0 ? 0 : choice(hit, right);
    if (own != Last.NONE) {
      boolean recent = Last.isRecent(own);
      long gap = recent ? gap(k, own) : Costs.WHOLE;
      if (!hit.alternating()) {
        cost += Costs.way(way[Last.surface(own)][hit.id()], gap);
      }
      if (recent) {
        cost += again(k, hit, own, gap);
        cost += rolls && busyUntil(own, k) > at[k] ? Costs.CLASH : 0;
      }
    }
    return cost;
  }

  /** A limb that does not strike: what it costs that the other does, by what this one did last. */
  private long idle(int k, Hit hit, int last, boolean right) {
    long cost = hit.engages() ? help(k, hit, last) : 0;
    if (soon(k, last)) {
      int id = Last.surface(last);
      cost += (right ? crosses[id][hit.id()] : crosses[hit.id()][id]) ? Costs.CROSSED_SOON : 0;
    }
    return cost;
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

  /** What it costs to strike again with the limb that struck last, where limbs alternate. */
  long repeatOf(int k, int own) {
    return wraps(k, own) ? Costs.NOT_ALTERNATING_AT_SEAM : Costs.NOT_ALTERNATING;
  }

  /** True if this was a stroke at the instant just before. */
  static boolean struckLast(int last) {
    return last != Last.NONE && Last.age(last) == 1 && !Last.helped(last);
  }

  /** True if the limb's last stroke was on the piece of this one. */
  boolean same(Hit hit, int last) {
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
