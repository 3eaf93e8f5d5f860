package tabor.emit.html;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tabor.emit.html.PlayData.Blow;
import tabor.emit.html.PlayData.Take;
import tabor.emit.html.PlayData.Tick;
import tabor.groove.Stroke;
import tabor.perform.Performance;
import tabor.perform.Segment;
import tabor.perform.Sound;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;
import tabor.timbre.Timbres;

/** Cuts performances into takes and keeps each different take once. */
final class Takes {
  private final Map<Take, Integer> numbers = new LinkedHashMap<>();

  /** The takes so far, in the order of their numbers. */
  List<Take> list() {
    return List.copyOf(numbers.keySet());
  }

  /** The number of each take; one that was there before has the number that it had. */
  List<Integer> of(List<Take> takes) {
    List<Integer> found = new ArrayList<>();
    for (Take take : takes) {
      Integer number = numbers.putIfAbsent(take, numbers.size());
      found.add(number == null ? numbers.size() - 1 : number);
    }
    return found;
  }

  /**
   * The take that each segment of a performance is. Safe for several threads.
   *
   * @param performance as it is played
   * @param eighths the clicks of the same with a click on eighths throughout
   */
  static List<Take> cut(Performance performance, Performance eighths) {
    List<List<Sound>> sounds = byStretch(performance);
    List<List<Sound>> between = byStretch(eighths);
    List<Take> takes = new ArrayList<>();
    for (int i = 0; i < sounds.size(); i++) {
      takes.add(take(performance.segments().get(i), sounds.get(i), between.get(i)));
    }
    return takes;
  }

  private static List<List<Sound>> byStretch(Performance performance) {
    List<List<Sound>> sounds = new ArrayList<>();
    for (int i = 0; i < performance.segments().size(); i++) {
      sounds.add(new ArrayList<>());
    }
    for (Sound sound : performance.sounds()) {
      sounds.get(sound.segment()).add(sound);
    }
    return sounds;
  }

  private static Take take(Segment segment, List<Sound> sounds, List<Sound> eighths) {
    IdentityHashMap<Stroke, Sound> mains = new IdentityHashMap<>();
    for (Sound sound : sounds) {
      if (sound.kind() == Sound.Kind.STROKE && sound.stroke() != null) {
        mains.put(sound.stroke(), sound);
      }
    }
    List<Blow> blows = new ArrayList<>();
    TreeMap<Time, Tick> clicks = new TreeMap<>();
    List<Tick> counts = new ArrayList<>();
    for (Sound sound : eighths) {
      if (sound.kind() == Sound.Kind.CLICK) {
        Time at = sound.start().minus(segment.start());
        clicks.put(at, new Tick(at, level(segment, sound), false));
      }
    }
    for (Sound sound : sounds) {
      Time at = sound.start().minus(segment.start());
      switch (sound.kind()) {
        case CLICK -> clicks.put(at, new Tick(at, level(segment, sound), true));
        case COUNT_IN -> counts.add(new Tick(at, level(segment, sound), true));
        case STROKE, GRACE, ROLL, BOUNCE -> blows.add(blow(segment, sound, at, mains));
      }
    }
    if (!eighths.isEmpty() && segment.kind().hasBars()) {
      addBeats(segment, clicks);
    }
    boolean section = segment.kind() == Segment.Kind.SECTION;
    List<Tick> countIn = section ? countIn(segment) : List.of();
    boolean held = segment.kind() == Segment.Kind.HOLD;
    Time from = section || held ? segment.from() : Time.ZERO;
    return new Take(from, segment.length(), blows, List.copyOf(clicks.values()), counts, countIn);
  }

  private static int level(Segment segment, Sound click) {
    if (click.at().sign() == 0) {
      return 2;
    }
    Meter meter = segment.meter(click.bar());
    return meter.beatStart(meter.beatAt(click.at())).equals(click.at()) ? 1 : 0;
  }

  /** The beats that no eighth falls on, as in 7/16. */
  private static void addBeats(Segment segment, Map<Time, Tick> clicks) {
    for (int bar = segment.firstBar(); bar <= segment.lastBar(); bar++) {
      Meter meter = segment.meter(bar);
      Time barline = segment.barline(bar).minus(segment.start());
      for (int i = 0; i < meter.beatCount(); i++) {
        Time at = barline.plus(meter.beatStart(i));
        if (at.sign() >= 0 && at.before(segment.length())) {
          clicks.putIfAbsent(at, new Tick(at, i == 0 ? 2 : 1, false));
        }
      }
    }
  }

  private static Blow blow(
      Segment segment, Sound sound, Time at, IdentityHashMap<Stroke, Sound> mains) {
    Sound main = sound.stroke() == null ? null : mains.get(sound.stroke());
    boolean timed = !sound.kind().isMeasured() && main != null;
    Time place = timed && main != null ? main.start().minus(segment.start()) : at;
    long lead = timed && main != null ? Time.of(main.micros() - sound.micros(), 100).rounded() : 0;
    Time damp = sound.isChoked() ? sound.length() : Time.ZERO;
    return new Blow(place, Timbres.name(sound), sound.velocity(), limb(sound), lead, damp);
  }

  private static int limb(Sound sound) {
    if (sound.limb() == null) {
      throw new IllegalStateException("a stroke without a limb: " + sound);
    }
    return sound.limb().ordinal();
  }

  /**
   * One bar of beats before a section, in its first meter; it stops where the section's pickup
   * begins.
   */
  private static List<Tick> countIn(Segment segment) {
    Meter meter = segment.meters().first();
    Time left = segment.pickup().before(meter.bar()) ? segment.pickup() : Time.ZERO;
    Time end = meter.bar().minus(left);
    List<Tick> ticks = new ArrayList<>();
    for (int i = 0; i < meter.beatCount() && meter.beatStart(i).before(end); i++) {
      ticks.add(new Tick(meter.beatStart(i).minus(end), i == 0 ? 2 : 1, true));
    }
    return ticks;
  }
}
