package tabor.body;

import java.util.List;
import tabor.groove.Groove;
import tabor.groove.Roll;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Limits;
import tabor.kit.Surface;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/**
 * Tells cheaply of most sections that nothing in them can be too fast or too far: in whole
 * microseconds, with every doubt left to {@link PaceChecks}, which works exactly. What passes here
 * would pass there.
 */
final class QuickPace {
  /** More than all roundings together. */
  private static final long SLACK = 20;

  private static final int LIMBS = 4;

  private final KitPlaces places;
  private final long perDouble;
  private final long[] perPair = new long[LIMBS];
  private final long reach;
  private final long[] before = new long[LIMBS];
  private final long[] beforeThat = new long[LIMBS];
  private final long[] first = new long[LIMBS];
  private final long[] second = new long[LIMBS];
  private final int[] seen = new int[LIMBS];
  private final Surface[] surface = new Surface[LIMBS];
  private final Surface[] firstSurface = new Surface[LIMBS];

  private QuickPace(Groove groove, Limits limits) {
    this.places = KitPlaces.of(groove.setting().kit());
    this.perDouble = micros(limits.doubles().extreme().inverse(), 1_000_000L) + SLACK;
    for (Limb limb : Limb.values()) {
      Time rate = (limb.isHand() ? limits.hands() : limits.feet()).extreme();
      perPair[limb.ordinal()] = micros(rate.inverse(), 2_000_000L) + SLACK;
    }
    this.reach = limits.reach().extreme().rounded();
  }

  /** True if every stroke of the section has time enough beyond doubt. */
  static boolean isEasy(Groove groove, Tempo tempo, Limits limits) {
    if (groove.pickup().sign() > 0) {
      return false; // goes round without its pickup
    }
    long whole = tempo.secondsPerWhole().times(1_000_000).rounded();
    QuickPace quick = new QuickPace(groove, limits);
    List<Stroke> strokes = groove.strokes();
    int number = Integer.MIN_VALUE;
    long start = 0;
    for (int i = 0; i < strokes.size(); i++) {
      Stroke stroke = strokes.get(i);
      if (stroke.ornaments().graceNotes() > 0 || Roll.measured(stroke.ornaments()) != null) {
        return false;
      }
      if (stroke.bar() != number) {
        number = stroke.bar();
        start = micros(groove.position(number, Time.ZERO), whole);
      }
      if (!quick.next(stroke, start + micros(stroke.at(), whole))) {
        return false;
      }
    }
    return quick.closes(micros(groove.length(), whole));
  }

  private static long micros(Time wholes, long whole) {
    return wholes.num() * whole / wholes.den();
  }

  private boolean next(Stroke stroke, long at) {
    int limb = stroke.limb().ordinal();
    if (seen[limb] == 0) {
      first[limb] = at;
      firstSurface[limb] = stroke.surface();
    } else if (seen[limb] == 1) {
      second[limb] = at;
    }
    boolean fine =
        seen[limb] == 0
            || (enough(stroke.limb(), surface[limb], stroke.surface(), at - before[limb])
                && (seen[limb] == 1 || at - beforeThat[limb] >= perPair[limb]));
    beforeThat[limb] = before[limb];
    before[limb] = at;
    surface[limb] = stroke.surface();
    seen[limb]++;
    return fine;
  }

  private boolean closes(long length) {
    for (Limb limb : Limb.values()) {
      int i = limb.ordinal();
      if (seen[i] == 0) {
        continue;
      }
      long again = first[i] + length;
      if (!enough(limb, surface[i], firstSurface[i], again - before[i])) {
        return false;
      }
      if (seen[i] < 3
          ? length < perPair[i]
          : again - beforeThat[i] < perPair[i] || second[i] + length - before[i] < perPair[i]) {
        return false;
      }
    }
    return true;
  }

  private boolean enough(Limb limb, Surface from, Surface to, long gap) {
    if (gap < perDouble) {
      return false;
    }
    if (!limb.isHand() || from.equals(to)) {
      return true;
    }
    return gap >= places.distance(from, to) * 1_000_000L / reach + SLACK;
  }
}
