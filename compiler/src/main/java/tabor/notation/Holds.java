package tabor.notation;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.rhythm.Time;

/**
 * Where the strokes end whose length is heard: rolls, and cymbals that are held beyond their beat.
 * A roll fills its slot and the holds after it, but stops where its limb or its surface is struck
 * again. A cymbal rings under what comes next anyway, so its note stops at the next stroke of the
 * voice. Nothing goes on after the section.
 */
final class Holds {
  private final Groove groove;
  private final IdentityHashMap<Stroke, Time> ends = new IdentityHashMap<>();

  /** Where rolls end that another limb strikes into, on the same surface. */
  private final IdentityHashMap<Stroke, Time> goOn = new IdentityHashMap<>();

  private final List<Stroke> strokes;
  private final Voicing voicing;

  /**
   * Where held strokes end.
   *
   * @param strokes of the section as they are written
   */
  Holds(Groove groove, List<Stroke> strokes, Voicing voicing) {
    this.groove = groove;
    this.strokes = strokes;
    this.voicing = voicing;
    Map<Limb, Time> nextOfLimb = new EnumMap<>(Limb.class);
    Map<String, Time> nextOnSurface = new HashMap<>();
    Map<Voice, Time> nextOfVoice = new EnumMap<>(Voice.class);
    for (int i = strokes.size() - 1; i >= 0; ) {
      // All strokes of one place see only what comes after it.
      Time place = groove.position(strokes.get(i));
      int first = i;
      while (first > 0 && groove.position(strokes.get(first - 1)).equals(place)) {
        first--;
      }
      for (Stroke stroke : strokes.subList(first, i + 1)) {
        if (stroke.ornaments().isRolled()) {
          Time end = Time.min(place.plus(stroke.length()), groove.length());
          end = Time.min(end, nextOfLimb.getOrDefault(stroke.limb(), end));
          Time struck = nextOnSurface.getOrDefault(stroke.surface().name(), end);
          if (struck.before(end)) {
            goOn.put(stroke, end);
          }
          ends.put(stroke, Time.min(end, struck));
        } else if (stroke.surface().rings()
            && stroke.at().plus(stroke.length()).compareTo(beatEnd(stroke)) > 0) {
          Time end = Time.min(place.plus(stroke.length()), groove.length());
          ends.put(stroke, Time.min(end, nextOfVoice.getOrDefault(voicing.of(stroke), end)));
        }
      }
      for (Stroke stroke : strokes.subList(first, i + 1)) {
        nextOfLimb.put(stroke.limb(), place);
        nextOnSurface.put(stroke.surface().name(), place);
        nextOfVoice.put(voicing.of(stroke), place);
      }
      i = first - 1;
    }
  }

  private Time beatEnd(Stroke stroke) {
    Meter meter = groove.meter(stroke.bar());
    return stroke.at().before(meter.bar())
        ? meter.beatStart(meter.beatAt(stroke.at()) + 1)
        : stroke.at();
  }

  /** True if a stroke is written as long as it is held. */
  boolean isHeld(Stroke stroke) {
    return ends.containsKey(stroke);
  }

  /** Where a held stroke ends, from the section's start; its own place if it is not held. */
  Time end(Stroke stroke) {
    Time end = ends.get(stroke);
    return end == null ? groove.position(stroke) : end;
  }

  /** Where a roll ends if another limb's strokes on its surface do not cut it short on the page. */
  Time endByLimb(Stroke stroke) {
    return goOn.getOrDefault(stroke, end(stroke));
  }

  /** The ends of what one voice holds in each bar, measured from its barline. */
  Map<Integer, List<Time>> endsByBar(Voice voice) {
    Map<Integer, List<Time>> found = new HashMap<>();
    for (Stroke stroke : strokes) {
      Time end = ends.get(stroke);
      if (end != null && voicing.of(stroke) == voice) {
        Meters.Place place = groove.meters().place(end.minus(groove.pickup()));
        found.computeIfAbsent(place.bar(), none -> new ArrayList<>()).add(place.at());
      }
    }
    return found;
  }
}
