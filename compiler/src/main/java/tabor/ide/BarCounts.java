package tabor.ide;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.rhythm.Count;
import tabor.rhythm.CountNames;
import tabor.rhythm.Division;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/** The counts of a bar: those that strokes stand on, and those that a stroke could be added at. */
final class BarCounts {
  private BarCounts() {}

  /** The counts at which some stroke of the groove is, by its own word, in order of time. */
  static Map<String, List<Stroke>> struck(Groove groove, Predicate<Stroke> meant) {
    Map<String, List<Stroke>> found = new LinkedHashMap<>();
    groove.written().stream()
        .filter(meant)
        .sorted(Comparator.comparing(Stroke::at))
        .forEach(
            stroke ->
                found
                    .computeIfAbsent(
                        CountNames.of(stroke.slot(), groove.meter()).toString(),
                        count -> new ArrayList<>())
                    .add(stroke));
    return found;
  }

  /**
   * The counts that can be read in some bar of the groove: the slots of the words that are there,
   * and the plain reading of beats without any. A count that two words read differently is given
   * with the division named, once for each.
   */
  static List<String> readable(Groove groove) {
    Meter meter = groove.meter();
    List<String> found = new ArrayList<>();
    for (int beat = 0; beat < meter.beatCount(); beat++) {
      Set<Integer> divisions = new TreeSet<>();
      for (Stroke stroke : groove.written()) {
        Division division = stroke.slot().division();
        if (division.beat() == beat && division.beats() == 1) {
          divisions.add(division.slots());
        }
      }
      if (divisions.isEmpty()) {
        found.addAll(plain(meter, beat));
      } else {
        found.addAll(read(meter, beat, divisions));
      }
    }
    return found;
  }

  /** The plain reading of a whole bar. */
  static List<String> plain(Meter meter) {
    List<String> found = new ArrayList<>();
    for (int beat = 0; beat < meter.beatCount(); beat++) {
      found.addAll(plain(meter, beat));
    }
    return found;
  }

  private static List<String> plain(Meter meter, int beat) {
    return read(meter, beat, Set.of(Meter.isDotted(meter.beat(beat)) ? 3 : 4));
  }

  private static List<String> read(Meter meter, int beat, Set<Integer> divisions) {
    Map<Time, Map<Integer, String>> places = new TreeMap<>();
    Map<String, Set<Time>> meanings = new LinkedHashMap<>();
    for (int slots : divisions) {
      Division division = new Division(beat, 1, slots);
      for (int slot = 0; slot < slots; slot++) {
        Time at = meter.beatStart(beat).plus(meter.beat(beat).times(slot).over(slots));
        Count count = CountNames.of(division, at, meter);
        places.computeIfAbsent(at, place -> new TreeMap<>()).put(slots, count.toString());
        meanings.computeIfAbsent(count.toString(), word -> new LinkedHashSet<>()).add(at);
      }
    }
    List<String> found = new ArrayList<>();
    for (Map<Integer, String> names : places.values()) {
      Map.Entry<Integer, String> coarsest = names.entrySet().iterator().next();
      boolean clear = meanings.get(coarsest.getValue()).size() == 1;
      found.add(clear ? coarsest.getValue() : coarsest.getValue() + "/" + coarsest.getKey());
    }
    return found;
  }
}
