package tabor.perform;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Ornament;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.rhythm.Feel;
import tabor.rhythm.Slot;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/**
 * The sounds of one section at one tempo and feel, not yet placed in a performance.
 *
 * <p>A diddle is two strokes in the slot, an open roll four, two and two, beginning with the limb
 * that is written; where the other limb rolls at the same place too, each limb plays all four.
 * While the stroke is held they go on at the same speed. Further strokes are no louder than plain.
 * A buzz bounces about every 40 ms through its length, at three fifths of its velocity (common
 * practice, no source).
 */
final class SectionSounds {
  /** A cymbal that nothing cuts off is let ring so long. */
  private static final long RING = 4 * Clock.SECOND;

  private static final long BOUNCE = 40 * Clock.MILLI;

  private static final long FASTEST = 5 * Clock.MILLI;

  /**
   * A sound, placed from the barline of bar 1.
   *
   * @param early 0, or how many small strokes stand from this one to the main stroke, whose place
   *     {@code start} then is
   */
  record Local(
      Sound.Kind kind,
      Limb limb,
      Surface surface,
      int velocity,
      Time start,
      Time length,
      int early,
      Stroke stroke) {}

  private record Rolling(int bar, Time at, Limb limb) {}

  private final Groove groove;
  private final Tempo tempo;
  private final Swing swing;
  private final Volume volume;
  private final Set<Rolling> rolling = new HashSet<>();
  private final List<Local> found = new ArrayList<>();

  private final boolean coarse;

  private SectionSounds(Groove groove, Tempo tempo, Feel feel, boolean coarse) {
    this.groove = groove;
    this.tempo = tempo;
    this.coarse = coarse;
    Feel played = coarse ? new Feel(feel.unit(), share(feel.share())) : feel;
    this.swing = new Swing(groove.meter(), played, groove.strokes());
    this.volume = new Volume(groove, coarse);
  }

  /** Exact, unless exact places would outgrow what the sums after them can hold. */
  static List<Local> of(Groove groove, Tempo tempo, Feel feel) {
    try {
      List<Local> exact = of(groove, tempo, feel, false);
      if (exact.stream().allMatch(s -> Tame.isExact(s.start()) && Tame.isExact(s.length()))) {
        return exact;
      }
    } catch (ArithmeticException e) {
      // Out of 64 bits: the coarse reckoning below stays within them.
    }
    return of(groove, tempo, feel, true);
  }

  /** A share of swing to a millionth, where exact ones grow too long. */
  private static Time share(Time exact) {
    return Time.of(
        Math.max(1, Math.min((1 << 20) - 1, Tame.rounded(exact).times(1 << 20).rounded())),
        1 << 20);
  }

  private static List<Local> of(Groove groove, Tempo tempo, Feel feel, boolean coarse) {
    SectionSounds sounds = new SectionSounds(groove, tempo, feel, coarse);
    for (Stroke stroke : groove.strokes()) {
      if (stroke.ornaments().has(Ornament.OPEN_ROLL)) {
        sounds.rolling.add(new Rolling(stroke.bar(), stroke.at(), stroke.limb()));
      }
    }
    groove.strokes().forEach(sounds::add);
    return sounds.found;
  }

  private void add(Stroke stroke) {
    int small = stroke.ornaments().smallStrokes();
    Limb limb = stroke.limb();
    for (int i = small; i >= 1; i--) {
      // A ruff alternates into the main stroke: l r l R.
      Limb by = small == 3 && i == 2 ? limb : limb.other();
      Time gap = Clock.wholes(Placing.SMALL, tempo);
      add(
          Sound.Kind.SMALL,
          by,
          velocity(stroke, Level.GHOST),
          place(stroke, stroke.at()),
          gap,
          i,
          stroke);
    }
    if (stroke.ornaments().has(Ornament.BUZZ)) {
      buzz(stroke);
    } else if (stroke.ornaments().has(Ornament.DIDDLE)) {
      roll(stroke, 2, false);
    } else if (stroke.ornaments().has(Ornament.OPEN_ROLL)) {
      roll(stroke, 4, !rolling.contains(new Rolling(stroke.bar(), stroke.at(), limb.other())));
    } else {
      Time start = place(stroke, stroke.at());
      Time length = end(stroke).minus(start);
      if (stroke.surface().rings() && !stroke.ornaments().has(Ornament.CHOKE)) {
        length = Time.max(length, Clock.wholes(RING, tempo));
      }
      add(Sound.Kind.STROKE, limb, velocity(stroke, stroke.level()), start, length, 0, stroke);
    }
  }

  private void roll(Stroke stroke, int inSlot, boolean shared) {
    Time held = tame(stroke.length());
    Time step = Time.min(Tame.length(tame(slot(stroke))), held).over(inSlot);
    // Nobody rolls faster than that; what is held on in so small a slot would be endless.
    long count = Clock.picos(step, tempo) < FASTEST ? inSlot : held.over(step).floor();
    for (int i = 0; i < count; i++) {
      Time at = tame(stroke.at()).plus(step.times(i));
      Time start = place(stroke, at);
      Time length = place(stroke, at.plus(step)).minus(start);
      Limb by = shared && i / 2 % 2 == 1 ? stroke.limb().other() : stroke.limb();
      Level level = i > 0 && stroke.level() == Level.ACCENT ? Level.PLAIN : stroke.level();
      Time written = tame(groove.position(stroke.bar(), at));
      add(
          i == 0 ? Sound.Kind.STROKE : Sound.Kind.ROLL,
          by,
          volume.of(level, written),
          start,
          length,
          0,
          stroke);
    }
  }

  private void buzz(Stroke stroke) {
    Time start = place(stroke, stroke.at());
    Time length = end(stroke).minus(start);
    long bounces = Math.max(2, Math.min(10_000, Clock.picos(length, tempo) / BOUNCE));
    Time step = length.over(bounces);
    for (int i = 0; i < bounces; i++) {
      Time written = written(stroke).plus(tame(stroke.length()).over(bounces).times(i));
      Time full = Time.of(groove.setting().levels().of(stroke.level()));
      Time velocity = i == 0 ? full : full.times(3).over(5);
      add(
          i == 0 ? Sound.Kind.STROKE : Sound.Kind.BOUNCE,
          stroke.limb(),
          volume.scaled(velocity, written),
          start.plus(step.times(i)),
          step,
          0,
          stroke);
    }
  }

  private void add(
      Sound.Kind kind, Limb limb, int velocity, Time start, Time length, int early, Stroke stroke) {
    Time lasting = Tame.length(tame(length));
    found.add(
        new Local(kind, limb, stroke.surface(), velocity, tame(start), lasting, early, stroke));
  }

  private Time tame(Time time) {
    return coarse ? Tame.rounded(time) : time;
  }

  private Time written(Stroke stroke) {
    return tame(groove.position(stroke));
  }

  private int velocity(Stroke stroke, Level level) {
    return volume.of(level, written(stroke));
  }

  /** The slot of a stroke by itself, without the holds after it. */
  private Time slot(Stroke stroke) {
    Time length = stroke.slot().length(groove.meter());
    for (Slot.Part part : stroke.slot().parts()) {
      length = length.over(part.of());
    }
    return length;
  }

  private Time place(Stroke stroke, Time at) {
    Time line = groove.meter().bar().times(stroke.bar() - 1L);
    return tame(line.plus(swing.place(stroke.slot().division(), stroke.bar(), tame(at))));
  }

  private Time end(Stroke stroke) {
    return place(stroke, tame(stroke.at()).plus(tame(stroke.length())));
  }
}
