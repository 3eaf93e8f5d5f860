package tabor.emit.html;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tabor.emit.html.PlayData.Blow;
import tabor.emit.html.PlayData.Take;
import tabor.emit.html.PlayData.Tick;
import tabor.groove.Ornament;
import tabor.groove.Stroke;
import tabor.kit.Kits;
import tabor.kit.Surface;
import tabor.perform.Performance;
import tabor.perform.Segment;
import tabor.perform.Sound;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/** Cuts performances into takes and keeps each different take once. */
final class Takes {
  private final Map<Take, Integer> numbers = new LinkedHashMap<>();

  /** The takes so far, in the order of their numbers. */
  List<Take> list() {
    return List.copyOf(numbers.keySet());
  }

  /** The number of the take that each segment of a performance is. */
  List<Integer> of(Performance performance) {
    List<List<Sound>> sounds = new ArrayList<>();
    for (int i = 0; i < performance.segments().size(); i++) {
      sounds.add(new ArrayList<>());
    }
    for (Sound sound : performance.sounds()) {
      sounds.get(sound.segment()).add(sound);
    }
    List<Integer> found = new ArrayList<>();
    for (int i = 0; i < sounds.size(); i++) {
      Take take = take(performance.segments().get(i), sounds.get(i));
      Integer number = numbers.putIfAbsent(take, numbers.size());
      found.add(number == null ? numbers.size() - 1 : number);
    }
    return found;
  }

  private static Take take(Segment segment, List<Sound> sounds) {
    IdentityHashMap<Stroke, Sound> mains = new IdentityHashMap<>();
    for (Sound sound : sounds) {
      if (sound.kind() == Sound.Kind.STROKE && sound.stroke() != null) {
        mains.put(sound.stroke(), sound);
      }
    }
    List<Blow> blows = new ArrayList<>();
    List<Tick> clicks = new ArrayList<>();
    List<Tick> counts = new ArrayList<>();
    for (Sound sound : sounds) {
      Time at = sound.start().minus(segment.start());
      switch (sound.kind()) {
        case CLICK -> clicks.add(new Tick(at, sound.at().sign() == 0));
        case COUNT_IN -> counts.add(new Tick(at, sound.at().sign() == 0));
        case STROKE, GRACE, ROLL, BOUNCE -> blows.add(blow(segment, sound, at, mains));
      }
    }
    boolean section = segment.kind() == Segment.Kind.SECTION;
    List<Tick> countIn = section ? countIn(segment) : List.of();
    Time from = section ? segment.pickup().negate() : Time.ZERO;
    return new Take(from, segment.length(), blows, clicks, counts, countIn);
  }

  private static Blow blow(
      Segment segment, Sound sound, Time at, IdentityHashMap<Stroke, Sound> mains) {
    Sound main = sound.stroke() == null ? null : mains.get(sound.stroke());
    boolean timed = !sound.kind().isMeasured() && main != null;
    Time place = timed && main != null ? main.start().minus(segment.start()) : at;
    long lead = timed && main != null ? Time.of(main.micros() - sound.micros(), 100).rounded() : 0;
    Time damp = sound.isChoked() ? sound.length() : Time.ZERO;
    return new Blow(place, name(sound), sound.velocity(), limb(sound), lead, damp);
  }

  private static int limb(Sound sound) {
    if (sound.limb() == null) {
      throw new IllegalStateException("a stroke without a limb: " + sound);
    }
    return sound.limb().ordinal();
  }

  /** The script knows the standard surfaces by name and those of a kit's own by their key. */
  private static String name(Sound sound) {
    Surface surface = sound.surface();
    if (surface == null) {
      return "key:" + sound.key();
    }
    Surface standard = Kits.FIVE_PIECE.surface(surface.name());
    if (standard == null || standard.key() != surface.key()) {
      return "key:" + surface.key();
    }
    boolean rim =
        sound.kind() == Sound.Kind.STROKE
            && sound.stroke() != null
            && sound.stroke().ornaments().has(Ornament.RIMSHOT);
    return rim && surface.sort() == Surface.Sort.SNARE ? "snare.rimshot" : surface.name();
  }

  /** One bar of beats before a section; it stops where the section's pickup begins. */
  private static List<Tick> countIn(Segment segment) {
    Meter meter = segment.meter();
    Time left = segment.pickup().before(meter.bar()) ? segment.pickup() : Time.ZERO;
    Time end = meter.bar().minus(left);
    List<Tick> ticks = new ArrayList<>();
    for (int i = 0; i < meter.beatCount() && meter.beatStart(i).before(end); i++) {
      ticks.add(new Tick(meter.beatStart(i).minus(end), i == 0));
    }
    return ticks;
  }
}
