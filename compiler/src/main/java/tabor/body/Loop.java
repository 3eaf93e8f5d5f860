package tabor.body;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Ornament;
import tabor.groove.Roll;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.rhythm.Time;

/**
 * What one pair of limbs has to do in a section, instant by instant; after the last comes the first
 * again. Places are counted in ticks, whole numbers that every bar has a whole number of.
 */
final class Loop {
  /** Ticks in a whole note. */
  static final long WHOLE = 2_400_000;

  /**
   * A stroke of the pair.
   *
   * @param number its number among the loop's strokes
   * @param surface what is struck
   * @param id the surface's number in this loop, 0 to 254
   * @param at where, in ticks
   * @param beat the beat it is in, counted from the start of the section
   * @param inBeat where in that beat, 0 to less than 1
   * @param engages true if the other limb is needed too: grace notes, an open roll
   * @param openRoll true for an open roll
   * @param end until when a roll keeps its limb busy; its own place without one
   * @param open its number among the open strokes; -1 for a given one
   * @param given for a given stroke: true if it is the right limb's
   * @param ofPair true for an open stroke of a {@code hands} or {@code feet} part
   * @param before the limb it had in the section that this one came from; null if there was none
   */
  record Hit(
      int number,
      Surface surface,
      int id,
      long at,
      int beat,
      Time inBeat,
      boolean engages,
      boolean openRoll,
      long end,
      int open,
      boolean given,
      boolean ofPair,
      @Nullable Limb before) {
    boolean isOpen() {
      return open >= 0;
    }
  }

  /** All that happens at one place: what each limb has been given, and what is open. */
  static final class Instant {
    final long at;
    @Nullable Hit right;
    @Nullable Hit left;
    final List<Hit> open = new ArrayList<>(2);

    Instant(long at) {
      this.at = at;
    }
  }

  final boolean hands;
  final long length;

  /** Ticks in a second at the section's tempo. */
  final double second;

  final List<Instant> instants = new ArrayList<>();

  /** All strokes in order of time. */
  final List<Hit> hits = new ArrayList<>();

  final KitPlaces places;

  /** What the other pair plays; where, is worked out when it is asked for, which is seldom. */
  private final List<Stroke> others = new ArrayList<>();

  private long @Nullable [] othersAt;

  /** The surfaces by number. */
  final List<Surface> surfaces = new ArrayList<>();

  private final Meters meters;

  /** The lengths of the beats of one bar of each meter, one after the other. */
  private final long[] beats;

  /** The number, in that row, of the first beat of each meter. */
  private final int[] firstBeats;

  private final long lead;
  private int bar = -1;
  private long barStart;
  private final Map<String, Integer> ids = new HashMap<>();

  /** Places of each meter's bar that came up before: most bars have the same. */
  private final List<Map<Time, InBar>> known = new ArrayList<>();

  private Loop(Groove.Setting setting, int bars, Time pickup, boolean hands) {
    this.meters = setting.meters();
    this.hands = hands;
    this.places = KitPlaces.written(setting.kit());
    this.lead = ticks(pickup);
    this.length = lead + ticks(meters.length(bars));
    Time secondsPerWhole = setting.tempo().secondsPerWhole();
    this.second = (double) WHOLE * secondsPerWhole.den() / secondsPerWhole.num();
    List<Meter> cycle = meters.cycle();
    this.firstBeats = new int[cycle.size() + 1];
    for (int i = 0; i < cycle.size(); i++) {
      firstBeats[i + 1] = firstBeats[i] + cycle.get(i).beatCount();
      known.add(new HashMap<>());
    }
    this.beats = new long[firstBeats[cycle.size()]];
    for (int i = 0; i < cycle.size(); i++) {
      Meter meter = cycle.get(i);
      for (int beat = 0; beat < meter.beatCount(); beat++) {
        beats[firstBeats[i] + beat] = ticks(meter.beat(beat));
      }
    }
  }

  /**
   * The loop of one pair.
   *
   * @param hands true for the hands' strokes, false for the feet's
   */
  static Loop of(
      Groove.Setting setting,
      int bars,
      Time pickup,
      List<Stroke> given,
      List<Dealer.Open> open,
      boolean hands) {
    Loop loop = new Loop(setting, bars, pickup, hands);
    loop.merge(given, open);
    return loop;
  }

  private void merge(List<Stroke> given, List<Dealer.Open> open) {
    int next = 0;
    for (int i = 0; i < open.size(); i++) {
      Dealer.Open one = open.get(i);
      if (one.hands() != hands) {
        others.add(one.stroke());
        continue;
      }
      while (next < given.size() && Stroke.byPlace(given.get(next), one.stroke()) <= 0) {
        give(given.get(next++));
      }
      Instant here = instant(one.stroke());
      here.open.add(hit(one.stroke(), here.at, i, one.ofPair(), one.before()));
    }
    while (next < given.size()) {
      give(given.get(next++));
    }
  }

  private void give(Stroke stroke) {
    if (stroke.limb().isHand() != hands) {
      others.add(stroke);
      return;
    }
    Instant here = instant(stroke);
    Hit hit = hit(stroke, here.at, -1, false, null);
    if (stroke.limb().isRight()) {
      here.right = here.right == null ? hit : here.right;
    } else {
      here.left = here.left == null ? hit : here.left;
    }
  }

  private long at(Stroke stroke) {
    if (stroke.bar() != bar) {
      bar = stroke.bar();
      barStart = lead + ticks(meters.start(bar));
    }
    return barStart + place(stroke).ticks();
  }

  /** True if the other pair strikes at a place, but for rounding. */
  boolean othersStrike(long at) {
    if (othersAt == null) {
      othersAt = new long[others.size()];
      for (int i = 0; i < othersAt.length; i++) {
        othersAt[i] = at(others.get(i));
      }
      Arrays.sort(othersAt);
    }
    int near = Arrays.binarySearch(othersAt, at - TimeRows.CLOSE);
    int next = near < 0 ? -near - 1 : near;
    return next < othersAt.length && othersAt[next] <= at + TimeRows.CLOSE;
  }

  private Instant instant(Stroke stroke) {
    long at = at(stroke);
    if (!instants.isEmpty() && instants.get(instants.size() - 1).at == at) {
      return instants.get(instants.size() - 1);
    }
    Instant made = new Instant(at);
    instants.add(made);
    return made;
  }

  private Hit hit(Stroke stroke, long at, int open, boolean ofPair, @Nullable Limb before) {
    Ornament measured = Roll.measured(stroke.ornaments());
    boolean roll = measured != null && measured.takesBothLimbs();
    int id = ids.computeIfAbsent(stroke.surface().name(), name -> Math.min(ids.size(), 254));
    if (id == surfaces.size()) {
      surfaces.add(stroke.surface());
    }
    InBar place = place(stroke);
    Hit hit =
        new Hit(
            hits.size(),
            stroke.surface(),
            id,
            at,
            firstBeat(stroke.bar()) + place.beat(),
            place.inBeat(),
            roll || stroke.ornaments().graceNotes() > 0,
            roll,
            measured != null ? at + ticks(stroke.length()) : at,
            open,
            stroke.limb().isRight(),
            ofPair,
            before);
    hits.add(hit);
    return hit;
  }

  /** A place in a bar. */
  private record InBar(long ticks, int beat, Time inBeat) {}

  private InBar place(Stroke stroke) {
    Meter meter = meters.of(stroke.bar());
    return known
        .get(meters.index(stroke.bar()))
        .computeIfAbsent(
            stroke.at(),
            at -> {
              int beat = meter.beatAt(at);
              Time inBeat = at.minus(meter.beatStart(beat)).over(meter.beat(beat));
              return new InBar(ticks(at), beat, inBeat);
            });
  }

  /** Ticks of a length in whole notes, rounded. */
  private static long ticks(Time wholes) {
    // The same as rounding the product, without bringing it into lowest terms first.
    long twice = Math.multiplyExact(Math.multiplyExact(wholes.num(), WHOLE), 2);
    return Math.floorDiv(Math.addExact(twice, wholes.den()), Math.multiplyExact(wholes.den(), 2));
  }

  /** How long a beat is, in ticks; beats are counted from the start of the section. */
  long beat(int number) {
    int ofPickup = firstBeats[1];
    return beats[number < ofPickup ? number : (number - ofPickup) % beats.length];
  }

  /** The number of a bar's first beat, those of a whole bar 0 counted. */
  private int firstBeat(int number) {
    if (number == 0) {
      return 0;
    }
    int rounds = (number - 1) / meters.size();
    return firstBeats[1] + rounds * beats.length + firstBeats[meters.index(number)];
  }

  /** A time in ticks. */
  long ticks(double seconds) {
    return Math.round(seconds * second);
  }

  /** From one place forward to another, once round at most: more than 0 up to the length. */
  long from(long earlier, long later) {
    long gap = later - earlier;
    return gap > 0 ? gap : gap + length;
  }

  /** The limb of the pair. */
  Limb limb(boolean right) {
    if (hands) {
      return right ? Limb.RIGHT_HAND : Limb.LEFT_HAND;
    }
    return right ? Limb.RIGHT_FOOT : Limb.LEFT_FOOT;
  }
}
