package tabor.perform;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.groove.Grace;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Loudness;
import tabor.groove.Ornament;
import tabor.groove.Part;
import tabor.groove.Roll;
import tabor.groove.Snap;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.lists.Lists;
import tabor.rhythm.Division;
import tabor.rhythm.Feel;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/**
 * The sounds of one section at one tempo and feel, not yet placed in a performance. Grace notes and
 * measured rolls are those of {@link Grace} and {@link Roll}; a buzz bounces about every 40 ms
 * through its length, at three fifths of its velocity (common practice, no source).
 */
final class SectionSounds {
  /** A cymbal that nothing cuts off is let ring so long. */
  private static final long RING = 4 * Clock.SECOND;

  private static final long BOUNCE = 40 * Clock.MILLI;

  private static final long FASTEST = 5 * Clock.MILLI;

  /**
   * A sound, placed from the barline of bar 1.
   *
   * @param early 0, or how many grace notes stand from this one to the main stroke, whose place
   *     {@code start} then is
   * @param main where its main stroke sounds
   * @param stroke the stroke of the section that it belongs to
   */
  record Local(
      Sound.Kind kind,
      Limb limb,
      Surface surface,
      int velocity,
      Time start,
      Time length,
      int early,
      Time main,
      Stroke stroke) {}

  private final Groove groove;
  private final Tempo tempo;
  private final Snap snap;
  private final boolean snaps;
  private final Swing swing;
  private final Volume volume;
  private final List<Local> found = new ArrayList<>();

  private final boolean coarse;

  private SectionSounds(
      Groove groove, Tempo tempo, Feel feel, @Nullable Loudness over, boolean coarse) {
    this.groove = groove;
    this.tempo = tempo;
    this.coarse = coarse;
    this.snap = Snap.of(groove);
    this.snaps = Snap.isSwungEighths(feel);
    Feel played = coarse ? new Feel(feel.unit(), share(feel.share())) : feel;
    this.swing = new Swing(groove.meters(), played, groove.strokes());
    this.volume = new Volume(groove, over, coarse);
  }

  /** Exact, unless exact places would outgrow what the sums after them can hold. */
  static List<Local> of(Groove groove, Tempo tempo, Feel feel, @Nullable Loudness over) {
    try {
      List<Local> exact = of(groove, tempo, feel, over, false);
      if (Lists.all(
          exact, s -> BoundedTime.isExact(s.start()) && BoundedTime.isExact(s.length()))) {
        return exact;
      }
    } catch (ArithmeticException e) {
      // Out of 64 bits: the coarse sum below stays within them.
    }
    return of(groove, tempo, feel, over, true);
  }

  /** A share of swing to a millionth, where exact ones grow too long. */
  private static Time share(Time exact) {
    return Time.of(
        Math.max(1, Math.min((1 << 20) - 1, BoundedTime.rounded(exact).times(1 << 20).rounded())),
        1 << 20);
  }

  private static List<Local> of(
      Groove groove, Tempo tempo, Feel feel, @Nullable Loudness over, boolean coarse) {
    SectionSounds sounds = new SectionSounds(groove, tempo, feel, over, coarse);
    groove.strokes().forEach(sounds::add);
    return sounds.found;
  }

  private void add(Stroke shown) {
    // Another feel than the section's own is heard only: what had snapped goes back.
    Stroke stroke = snaps ? shown : snap.written(shown);
    for (Grace grace : Grace.of(stroke)) {
      add(
          Sound.Kind.GRACE,
          grace.limb(),
          velocity(stroke, Level.GHOST),
          place(stroke, stroke.at()),
          Clock.wholes(SoundPlacer.GRACE, tempo),
          grace.before(),
          shown);
    }
    if (stroke.ornaments().has(Ornament.BUZZ)) {
      buzz(stroke, shown);
      return;
    }
    Optional<Roll> roll = Roll.of(groove, snap, stroke);
    if (roll.isPresent()) {
      roll(roll.get(), shown);
      return;
    }
    Time start = place(stroke, stroke.at());
    Time length = end(stroke).minus(start);
    if (stroke.surface().rings() && !stroke.ornaments().has(Ornament.CHOKE)) {
      length = Time.max(length, Clock.wholes(RING, tempo));
    }
    add(
        Sound.Kind.STROKE,
        stroke.limb(),
        velocity(stroke, stroke.level()),
        start,
        length,
        0,
        shown);
  }

  private void roll(Roll roll, Stroke shown) {
    Stroke stroke = roll.stroke();
    Time step = BoundedTime.length(bounded(roll.step()));
    // Nobody rolls faster than that; what is held on in so small a slot would be endless.
    boolean endless = Clock.picos(step, tempo) < FASTEST;
    long count = endless ? Math.min(roll.count(), roll.inSlot()) : roll.count();
    for (int i = 0; i < count; i++) {
      Time at = bounded(stroke.at()).plus(step.times(i));
      Time start = place(stroke, at);
      Time length = place(stroke, at.plus(step)).minus(start);
      Time written = bounded(groove.position(stroke.bar(), at));
      add(
          i == 0 ? Sound.Kind.STROKE : Sound.Kind.ROLL,
          roll.limb(i),
          volume.of(roll.level(i), written),
          start,
          length,
          0,
          shown);
    }
  }

  private void buzz(Stroke stroke, Stroke shown) {
    Time start = place(stroke, stroke.at());
    Time length = end(stroke).minus(start);
    long bounces = Math.max(2, Math.min(10_000, Clock.picos(length, tempo) / BOUNCE));
    Time step = length.over(bounces);
    for (int i = 0; i < bounces; i++) {
      Time written = written(stroke).plus(bounded(stroke.length()).over(bounces).times(i));
      Time full = Time.of(groove.setting().levels().of(stroke.level()));
      Time velocity = i == 0 ? full : full.times(3).over(5);
      add(
          i == 0 ? Sound.Kind.STROKE : Sound.Kind.BOUNCE,
          stroke.limb(),
          volume.scaled(velocity, written),
          start.plus(step.times(i)),
          step,
          0,
          shown);
    }
  }

  private void add(
      Sound.Kind kind, Limb limb, int velocity, Time start, Time length, int early, Stroke stroke) {
    Time lasting = BoundedTime.length(bounded(length));
    Time at = bounded(start);
    boolean main =
        kind == Sound.Kind.STROKE
            || early > 0
            || found.isEmpty()
            || found.get(found.size() - 1).stroke() != stroke;
    Time from = main ? at : found.get(found.size() - 1).main();
    found.add(new Local(kind, limb, stroke.surface(), velocity, at, lasting, early, from, stroke));
  }

  private Time bounded(Time time) {
    return coarse ? BoundedTime.rounded(time) : time;
  }

  private Time written(Stroke stroke) {
    return bounded(groove.position(stroke));
  }

  private int velocity(Stroke stroke, Level level) {
    return volume.of(level, written(stroke));
  }

  private Time place(Stroke stroke, Time at) {
    Time line = groove.meters().start(stroke.bar());
    return bounded(line.plus(swing.place(division(stroke), stroke.bar(), bounded(at))));
  }

  private Division division(Stroke stroke) {
    return snaps ? snap.slot(stroke).division() : stroke.slot().division();
  }

  private Time end(Stroke stroke) {
    Time end = bounded(stroke.at()).plus(bounded(stroke.length()));
    return snaps && snap.isSnapped(stroke.bar(), end)
        ? bounded(groove.meters().start(stroke.bar()).plus(end))
        : place(stroke, end);
  }

  /** True if a stroke is left to the student, by what the source calls its part. */
  static boolean isLeftOut(Groove groove, Stroke stroke, List<Part> without) {
    if (without.isEmpty()) {
      return false;
    }
    for (int i = 0; i < groove.strokes().size(); i++) {
      if (groove.strokes().get(i) == stroke) {
        Stroke written = i < groove.written().size() ? groove.written().get(i) : stroke;
        return Lists.any(without, part -> part.test(written));
      }
    }
    return Lists.any(without, part -> part.test(stroke));
  }
}
