package tabor.perform;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.groove.Grace;
import tabor.groove.Groove;
import tabor.kit.Surface;
import tabor.rhythm.Time;

/**
 * Places the sounds of sections in a performance, and ends each where something else stops it.
 *
 * <p>Grace notes come 27.5 ms apart before their main stroke, by the tempo that holds there (25 to
 * 30 ms: common practice, no source). Where the performance starts less than that before the main
 * stroke they share what there is; before a main stroke at the very start there are none. The main
 * stroke never moves.
 *
 * <p>A sound ends no later than the next one on the same key begins; any stroke on the hi-hat, by
 * stick or foot, also ends the hi-hat sound before it. All end with the performance.
 */
final class SoundPlacer {
  /** From one grace note to the next. */
  static final long GRACE = Grace.SECONDS.times(Clock.SECOND).rounded();

  private static final int HIHAT = -1;

  private final List<Segment> segments;
  private final boolean round;
  private final Time end;
  private final List<Sound> placed = new ArrayList<>();

  /** {@code round} if the end is followed by the start, over and over. */
  SoundPlacer(List<Segment> segments, boolean round) {
    this.segments = segments;
    this.round = round;
    this.end = segments.get(segments.size() - 1).end();
  }

  /** Adds those sounds of a section that one segment plays. */
  void add(int index, PlannedSegment planned, List<SectionSounds.Local> locals) {
    Segment segment = segments.get(index);
    Groove groove = segment.groove();
    Time line = segment.barline(1);
    boolean held = segment.kind() == Segment.Kind.HOLD;
    for (SectionSounds.Local local : locals) {
      Time main = local.main();
      boolean here =
          held
              ? main.equals(segment.from())
              : !main.before(segment.from()) && main.before(segment.to());
      boolean late = planned.until() != null && !local.start().before(planned.until());
      if (!here
          || late
          || (groove != null
              && SectionSounds.isLeftOut(groove, local.stroke(), planned.manner().without()))) {
        continue;
      }
      Time start = BoundedTime.plus(line, local.start());
      if (local.early() > 0) {
        Time early = early(index, start, local.early(), local.stroke().ornaments().graceNotes());
        if (early == null) {
          continue;
        }
        start = early;
      }
      add(
          new Sound(
              local.kind(),
              local.limb(),
              local.surface(),
              local.surface().key(),
              local.velocity(),
              start,
              held
                  ? Time.max(local.length(), BoundedTime.minus(segment.end(), start))
                  : local.length(),
              0,
              index,
              local.stroke().bar(),
              local.stroke().at(),
              local.stroke()));
    }
  }

  /** Adds a click or a beat of the count-in. */
  void add(Sound sound) {
    placed.add(sound);
  }

  private @Nullable Time early(int index, Time main, int steps, int small) {
    Time first = back(index, main, small * GRACE);
    if (round) {
      Time own = back(index, main, steps * GRACE);
      return own.sign() < 0 ? BoundedTime.plus(own, end) : own;
    }
    if (main.sign() == 0) {
      return null;
    }
    return first.sign() < 0
        ? main.times(small - (long) steps).over(small)
        : back(index, main, steps * GRACE);
  }

  /** The place so many picoseconds before another, through the tempi on the way. */
  private Time back(int index, Time from, long picos) {
    Time place = from;
    long left = picos;
    for (int i = index; ; i--) {
      Segment segment = segments.get(i);
      long room = Clock.picos(place.minus(segment.start()), segment.tempo());
      if (left <= room || i == 0) {
        return BoundedTime.minus(place, Clock.wholes(left, segment.tempo()));
      }
      left -= room;
      place = segment.start();
    }
  }

  Performance finished(List<Performance.Words> words) {
    placed.sort(Performance.ORDER);
    Map<Integer, Time> next = new HashMap<>();
    if (round) {
      for (int i = placed.size() - 1; i >= 0; i--) {
        next.put(group(placed.get(i)), BoundedTime.plus(placed.get(i).start(), end));
      }
    }
    // From the end: what starts together does not cut each other off.
    for (int i = placed.size() - 1; i >= 0; ) {
      int from = i;
      while (from > 0 && placed.get(from - 1).start().equals(placed.get(i).start())) {
        from--;
      }
      for (int j = from; j <= i; j++) {
        Sound sound = placed.get(j);
        Time stop = next.getOrDefault(group(sound), sound.end());
        Time length = Time.min(sound.length(), BoundedTime.minus(stop, sound.start()));
        if (!round) {
          length = Time.min(length, BoundedTime.minus(end, sound.start()));
        }
        placed.set(j, sound.lasting(BoundedTime.length(length), micros(sound)));
      }
      for (int j = from; j <= i; j++) {
        next.put(group(placed.get(j)), placed.get(j).start());
      }
      i = from - 1;
    }
    return new Performance(segments, placed, end, words);
  }

  /** Its segment says the tempo, unless it is a grace note that reaches into the one before. */
  private long micros(Sound sound) {
    int i = sound.segment();
    while (i > 0 && sound.start().before(segments.get(i).start())) {
      i--;
    }
    return Performance.micros(segments.get(i), sound.start());
  }

  private static int group(Sound sound) {
    Surface surface = sound.surface();
    return surface != null && surface.isHiHat() ? HIHAT : sound.key();
  }
}
