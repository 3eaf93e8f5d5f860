package tabor.body;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Ornament;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/**
 * What one pair of limbs has to do in a section, instant by instant; after the last comes the first
 * again.
 */
final class Loop {
  /**
   * A stroke of the pair.
   *
   * @param surface what is struck
   * @param id the surface's number in this loop, 0 to 254
   * @param engages true if the other limb is needed too: small strokes, an open roll
   * @param openRoll true for an open roll
   * @param end until when a roll keeps its limb busy, in microseconds; its own place without one
   * @param open its number among the open strokes; -1 for a given one
   * @param alternating true for an open stroke of a part of one pair of limbs
   * @param strong what the left limb pays for so strong a place of the bar
   */
  record Hit(
      Surface surface,
      int id,
      boolean engages,
      boolean openRoll,
      long end,
      int open,
      boolean alternating,
      long strong) {}

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
  final List<Instant> instants = new ArrayList<>();
  final Places places;

  /** The surfaces by number. */
  final List<Surface> surfaces = new ArrayList<>();

  /** By surface number: -1 if the writer gives it to the left only, 1 to the right only, else 0. */
  final List<Integer> habit = new ArrayList<>();

  private final Groove.Setting setting;
  private final long lead;
  private final long bar;
  private final Map<String, Integer> ids = new HashMap<>();

  private Loop(Groove.Setting setting, int bars, Time pickup, boolean hands) {
    this.setting = setting;
    this.hands = hands;
    this.places = Places.written(setting.kit());
    this.lead = Costs.micros(pickup);
    this.bar = Costs.micros(setting.meter().bar());
    this.length = Costs.micros(pickup.plus(setting.meter().bar().times(bars)));
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
        continue;
      }
      while (next < given.size() && !later(given.get(next), one.stroke())) {
        give(given.get(next++));
      }
      instant(one.stroke()).open.add(hit(one.stroke(), i, one.alternating()));
    }
    while (next < given.size()) {
      give(given.get(next++));
    }
  }

  private static boolean later(Stroke a, Stroke b) {
    return a.bar() != b.bar() ? a.bar() > b.bar() : a.at().compareTo(b.at()) > 0;
  }

  private void give(Stroke stroke) {
    if (stroke.limb().isHand() != hands) {
      return;
    }
    Instant here = instant(stroke);
    Hit hit = hit(stroke, -1, false);
    int side = stroke.limb().isRight() ? 1 : -1;
    int before = habit.get(hit.id());
    habit.set(hit.id(), before == NO_HABIT || before == side ? side : 0);
    if (stroke.limb().isRight()) {
      here.right = here.right == null ? hit : here.right;
    } else {
      here.left = here.left == null ? hit : here.left;
    }
  }

  /** A surface that the writer has given to nobody. */
  static final int NO_HABIT = 2;

  /** What the writer's habit costs a limb on a surface. */
  long habit(int id, boolean right) {
    return habit.get(id) == (right ? -1 : 1) ? Costs.AGAINST_HABIT : 0;
  }

  private Instant instant(Stroke stroke) {
    // Bars are whole numbers of microseconds: their lengths have powers of two below them.
    long at = lead + bar * (stroke.bar() - 1L) + Costs.micros(stroke.at());
    if (!instants.isEmpty() && instants.get(instants.size() - 1).at == at) {
      return instants.get(instants.size() - 1);
    }
    Instant made = new Instant(at);
    instants.add(made);
    return made;
  }

  private Hit hit(Stroke stroke, int open, boolean alternating) {
    Instant here = instants.get(instants.size() - 1);
    boolean roll = stroke.ornaments().has(Ornament.OPEN_ROLL);
    boolean diddle = stroke.ornaments().has(Ornament.DIDDLE);
    int id = ids.computeIfAbsent(stroke.surface().name(), name -> Math.min(ids.size(), 254));
    if (id == surfaces.size()) {
      surfaces.add(stroke.surface());
      habit.add(NO_HABIT);
    }
    return new Hit(
        stroke.surface(),
        id,
        roll || stroke.ornaments().smallStrokes() > 0,
        roll,
        roll || diddle ? here.at + Costs.micros(stroke.length()) : here.at,
        open,
        alternating,
        open < 0 || alternating ? 0 : strong(stroke.at()));
  }

  private long strong(Time at) {
    Meter meter = setting.meter();
    int beat = meter.beatAt(at);
    Time inBeat = at.minus(meter.beatStart(beat));
    if (inBeat.sign() == 0) {
      return Costs.LEFT_ON_BEAT + (beat == 0 ? Costs.LEFT_ON_BAR : 0);
    }
    return inBeat.times(2).equals(meter.beat(beat)) ? Costs.LEFT_ON_HALF : 0;
  }

  /** The limb of the pair. */
  Limb limb(boolean right) {
    if (hands) {
      return right ? Limb.RIGHT_HAND : Limb.LEFT_HAND;
    }
    return right ? Limb.RIGHT_FOOT : Limb.LEFT_FOOT;
  }
}
