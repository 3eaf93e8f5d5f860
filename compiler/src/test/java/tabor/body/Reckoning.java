package tabor.body;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.groove.Ornament;
import tabor.groove.Ornaments;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.rhythm.Time;

/**
 * Adds up by the tables of docs/body.md what a dealing costs a pair of limbs, stroke by stroke from
 * the page, going round. There is no search in it and no state of one: for each stroke it looks
 * back for what that limb did last, and the least is looked for among all dealings that there are.
 * What a stroke is for is taken from {@link Roles}.
 */
final class Reckoning {
  /** What a limb did last is forgotten after so many places. */
  private static final int PLACES = 4;

  /** Equal lengths may be unequal by so many ticks. */
  private static final long ROUNDING = 3;

  private record Beat(
      int index,
      Surface surface,
      long at,
      boolean bothNeeded,
      boolean openRoll,
      long end,
      @Nullable Limb given,
      @Nullable Limb before,
      boolean time,
      @Nullable LimbWish wish) {}

  /** What a limb did last: a stroke of its own, or one of the other limb's that it helped with. */
  private record Last(Beat stroke, boolean own, int instant, int places, long gap, boolean wraps) {}

  private final boolean hands;
  private final KitPlaces kit;
  private final long length;
  private final double second;
  private final List<List<Beat>> instants = new ArrayList<>();
  private final List<Beat> open = new ArrayList<>();
  private final List<Beat> given = new ArrayList<>();

  /** How many strokes there are at a place. */
  private final Map<Long, Integer> together = new HashMap<>();

  /** Who strikes at each instant: the right limb, the left limb. */
  private final @Nullable Beat[][] by;

  /** The strokes of one pair in a section. */
  Reckoning(Dealt section, boolean hands) {
    this.hands = hands;
    this.kit = KitPlaces.written(section.setting().kit());
    Time bar = section.setting().meters().length(1);
    this.length = ticks(bar.times(section.bars));
    Time whole = section.setting().tempo().secondsPerWhole();
    this.second = (double) Loop.WHOLE * whole.den() / whole.num();
    Loop loop =
        Loop.of(section.setting(), section.bars, Time.ZERO, section.given, section.open, hands);
    Roles.Read roles = Roles.of(loop);
    List<Stroke> written =
        section.given.stream().filter(one -> one.limb().isHand() == hands).toList();
    for (Loop.Hit hit : loop.hits) {
      Dealer.Open asked = hit.isOpen() ? section.open.get(hit.open()) : null;
      Stroke stroke = asked == null ? written.get(given.size()) : asked.stroke();
      Ornaments ornaments = stroke.ornaments();
      long at = ticks(bar.times(stroke.bar() - 1L).plus(stroke.at()));
      boolean openRoll = ornaments.has(Ornament.OPEN_ROLL);
      boolean rolled = openRoll || ornaments.has(Ornament.DIDDLE);
      Beat beat =
          new Beat(
              hit.open(),
              stroke.surface(),
              at,
              openRoll || ornaments.has(Ornament.FLAM),
              openRoll,
              rolled ? at + ticks(stroke.length()) : at,
              asked == null ? stroke.limb() : null,
              asked == null ? null : asked.before(),
              roles.time()[hit.number()],
              asked == null ? null : roles.wishes().get(hit.number()));
      if (instants.isEmpty() || instants.get(instants.size() - 1).get(0).at() < at) {
        instants.add(new ArrayList<>());
      }
      instants.get(instants.size() - 1).add(beat);
      (asked == null ? given : open).add(beat);
      together.merge(at, 1, Integer::sum);
    }
    this.by = new Beat[instants.size()][2];
  }

  private static long ticks(Time wholes) {
    return wholes.times(Loop.WHOLE).floor();
  }

  private long ticks(double seconds) {
    return Math.round(seconds * second);
  }

  /** The points of a dealing, and in thousandths of one how many strokes change their limb. */
  double cost(List<@Nullable Limb> limbs) {
    long points = 0;
    int changed = 0;
    for (int k = 0; k < by.length; k++) {
      Arrays.fill(by[k], null);
      for (Beat one : instants.get(k)) {
        Limb limb = limb(one, limbs);
        if (limb != null) {
          by[k][limb.isRight() ? 0 : 1] = one;
          changed += one.before() != null && one.before() != limb ? 1 : 0;
        }
      }
    }
    for (int k = 0; k < by.length; k++) {
      points += together(by[k][0], by[k][1]) + limb(k, 0) + limb(k, 1);
    }
    return points + changed / 1000.0;
  }

  private static @Nullable Limb limb(Beat one, List<@Nullable Limb> limbs) {
    return one.given() != null ? one.given() : limbs.get(one.index());
  }

  /** The least that any dealing costs. */
  double least(int strokes) {
    return least(new ArrayList<>(Collections.nCopies(strokes, null)), 0);
  }

  private double least(List<@Nullable Limb> limbs, int from) {
    if (from == open.size()) {
      return isPossible(limbs) ? cost(limbs) : Double.MAX_VALUE;
    }
    double best = Double.MAX_VALUE;
    Limb right = hands ? Limb.RIGHT_HAND : Limb.RIGHT_FOOT;
    boolean crowded = together.getOrDefault(open.get(from).at(), 0) > 2;
    for (Limb limb : new @Nullable Limb[] {right, right.other(), null}) {
      if (limb == null && !crowded) {
        continue;
      }
      limbs.set(open.get(from).index(), limb);
      best = Math.min(best, least(limbs, from + 1));
    }
    return best;
  }

  /** No limb plays two strokes at once, and no stroke is left out while a limb is free. */
  private boolean isPossible(List<@Nullable Limb> limbs) {
    for (List<Beat> instant : instants) {
      int right = 0;
      int left = 0;
      for (Beat one : instant) {
        Limb limb = limb(one, limbs);
        right += limb != null && limb.isRight() ? 1 : 0;
        left += limb != null && !limb.isRight() ? 1 : 0;
      }
      if (right > 1 || left > 1 || right + left < Math.min(2, instant.size())) {
        return false;
      }
    }
    return true;
  }

  /** Both limbs at one instant. */
  private long together(@Nullable Beat right, @Nullable Beat left) {
    if (right == null || left == null) {
      return 0;
    }
    boolean onePlace = right.surface().equals(left.surface());
    boolean sharedRoll = right.openRoll() && left.openRoll() && onePlace;
    long cost = (right.bothNeeded() || left.bothNeeded()) && !sharedRoll ? Weights.BUSY : 0;
    if (hands) {
      if (kit.crosses(right.surface(), left.surface())) {
        cost += Weights.CROSSED;
      } else if (kit.of(right.surface()).x() < kit.of(left.surface()).x()) {
        cost += Weights.RIGHT_ON_THE_LEFT;
      }
      if (isSnare(right) && !isSnare(left)) {
        cost += Weights.SNARE_NOT_LEFT;
      }
    }
    return cost;
  }

  private static boolean isSnare(Beat stroke) {
    return stroke.surface().sort() == Surface.Sort.SNARE;
  }

  /** What a limb did last before an instant, going round; null if it never does anything. */
  private @Nullable Last last(int k, int limb) {
    for (int places = 1; places <= by.length; places++) {
      int j = Math.floorMod(k - places, by.length);
      Beat own = by[j][limb];
      Beat other = by[j][1 - limb];
      if (own != null || (other != null && other.bothNeeded())) {
        boolean wraps = places > k;
        long gap = at(k) - at(j) + (wraps ? length : 0);
        return new Last(own != null ? own : other, own != null, j, places, gap, wraps);
      }
    }
    return null;
  }

  private long at(int k) {
    return instants.get(k).get(0).at();
  }

  /** A roll keeps its limb busy until it ends, an open roll both; not into the next time round. */
  private boolean isBusy(Last last, int k) {
    Beat stroke = last.stroke();
    return !last.wraps() && (last.own() || stroke.openRoll()) && stroke.end() > at(k);
  }

  /** After half a second a limb has rested: only where it is counts. */
  private boolean isRecent(@Nullable Last last, int k) {
    return last != null
        && ((last.places() <= PLACES && last.gap() < ticks(Weights.RESTED)) || isBusy(last, k));
  }

  private boolean isQuick(Last last) {
    return last.gap() < ticks(Weights.SLOW) + ROUNDING;
  }

  private boolean keptTime(@Nullable Last last, int k, Beat now) {
    return isRecent(last, k)
        && last.own()
        && last.stroke().time()
        && last.stroke().surface().piece().equals(now.surface().piece());
  }

  private long limb(int k, int limb) {
    Beat now = by[k][limb];
    Beat others = by[k][1 - limb];
    Last own = last(k, limb);
    return now != null
        ? strike(k, now, limb, own, last(k, 1 - limb))
        : others != null && own != null ? idle(k, others, limb, own) : 0;
  }

  private long strike(int k, Beat now, int limb, @Nullable Last own, @Nullable Last other) {
    long cost = 0;
    if (own != null) {
      cost += way(k, own, now);
      if (isRecent(own, k)) {
        cost += (hands ? again(now, limb, own) : 0) + (isBusy(own, k) ? Weights.BUSY : 0);
      }
    }
    if (now.time() && keptTime(other, k, now)) {
      boolean stays = keptTime(own, k, now) && own.places() <= other.places();
      cost += stays ? 0 : Weights.TIME_CHANGES_HANDS;
    }
    LimbWish wish = now.wish();
    if (wish != null) {
      cost += wish.right() == (limb == 0) ? 0 : wish.weight();
      List<Boolean> written =
          given.stream()
              .filter(one -> one.surface().equals(now.surface()))
              .map(one -> one.given().isRight())
              .distinct()
              .toList();
      cost += written.equals(List.of(limb != 0)) ? Weights.AGAINST_THE_WRITER : 0;
      boolean otherIsThere = other != null && other.stroke().surface().equals(now.surface());
      boolean isThere = own != null && own.stroke().surface().equals(now.surface());
      boolean alone = wish.reason() == LimbWish.Reason.ALONE;
      cost += alone && otherIsThere && !isThere ? Weights.NOT_AT_HOME : 0;
    }
    return cost;
  }

  /** The limb that strikes struck, or helped, a short time ago as well. */
  private long again(Beat now, int limb, Last own) {
    if (!isQuick(own)) {
      return 0;
    }
    long cost = 0;
    long burst = ticks(Weights.BURSTING);
    if (own.gap() < burst) {
      cost += Weights.BURST * (burst - own.gap()) / own.gap();
    }
    if (now.time() && own.own() && own.stroke().time()) {
      return cost;
    }
    Last first = last(own.instant(), limb);
    boolean third = own.own() && isRecent(first, own.instant()) && isQuick(first);
    return cost + Weights.DOUBLE + (third ? Weights.THIRD : 0);
  }

  private long way(int k, Last from, Beat to) {
    if (!hands) {
      return 0; // feet have their own pedals
    }
    double centimetres = kit.distance(from.stroke().surface(), to.surface());
    long rested = ticks(Weights.RESTED);
    long time = isRecent(from, k) ? Math.min(rested, from.gap()) : rested;
    return Math.round(centimetres / Weights.CENTIMETRES_PER_SECOND_A_POINT * second) / time;
  }

  /** The limb that does not strike: it may be needed to help, or be reached across. */
  private long idle(int k, Beat others, int limb, Last own) {
    long cost = 0;
    if (others.bothNeeded()) {
      cost += way(k, own, others);
      cost += isBusy(own, k) ? Weights.BUSY : 0;
    }
    if (hands && isRecent(own, k) && own.gap() <= ticks(Weights.SOON)) {
      Surface here = own.stroke().surface();
      Surface there = others.surface();
      boolean crosses = limb == 0 ? kit.crosses(here, there) : kit.crosses(there, here);
      cost += crosses ? Weights.CROSSED_SOON : 0;
    }
    return cost;
  }
}
