package tabor.notation;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import tabor.groove.Groove;
import tabor.groove.Ornament;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.rhythm.Time;

/**
 * Where the rolls of a section end. A roll fills its slot and the holds after it, but stops where
 * its limb or its surface is struck again, and at the section's end.
 */
final class Rolls {
  private final Groove groove;
  private final IdentityHashMap<Stroke, Time> ends = new IdentityHashMap<>();

  Rolls(Groove groove) {
    this.groove = groove;
    Map<Limb, Time> nextOfLimb = new EnumMap<>(Limb.class);
    Map<String, Time> nextOnSurface = new HashMap<>();
    List<Stroke> strokes = groove.strokes();
    for (int i = strokes.size() - 1; i >= 0; ) {
      // All strokes of one place see only what comes after it.
      Time place = groove.position(strokes.get(i));
      int first = i;
      while (first > 0 && groove.position(strokes.get(first - 1)).equals(place)) {
        first--;
      }
      for (Stroke stroke : strokes.subList(first, i + 1)) {
        if (isRoll(stroke)) {
          Time end = Time.min(place.plus(stroke.length()), groove.length());
          end = Time.min(end, nextOfLimb.getOrDefault(stroke.limb(), end));
          ends.put(stroke, Time.min(end, nextOnSurface.getOrDefault(stroke.surface().name(), end)));
        }
      }
      for (Stroke stroke : strokes.subList(first, i + 1)) {
        nextOfLimb.put(stroke.limb(), place);
        nextOnSurface.put(stroke.surface().name(), place);
      }
      i = first - 1;
    }
  }

  static boolean isRoll(Stroke stroke) {
    return stroke.ornaments().list().stream().anyMatch(Ornament::isRoll);
  }

  /** Where a stroke's roll ends, from the section's start; its own place if it does not roll. */
  Time end(Stroke stroke) {
    Time end = ends.get(stroke);
    return end == null ? groove.position(stroke) : end;
  }

  /** The ends of the rolls of one voice that fall into each bar, measured from its barline. */
  Map<Integer, List<Time>> endsByBar(Voice voice) {
    Map<Integer, List<Time>> found = new HashMap<>();
    Time bar = groove.meter().bar();
    for (Stroke stroke : groove.strokes()) {
      Time end = ends.get(stroke);
      if (end != null && Voice.of(stroke.limb()) == voice) {
        Time fromBarOne = end.minus(groove.pickup());
        int number = Math.toIntExact(fromBarOne.over(bar).floor()) + 1;
        found
            .computeIfAbsent(number, none -> new ArrayList<>())
            .add(fromBarOne.minus(bar.times(number - 1L)));
      }
    }
    return found;
  }
}
