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
import tabor.groove.CountLabels;
import tabor.groove.CountingWords;
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
  static Map<Count, List<Stroke>> struck(Groove groove, Predicate<Stroke> meant) {
    Map<Count, List<Stroke>> found = new LinkedHashMap<>();
    groove.written().stream()
        .filter(meant)
        .sorted(Comparator.comparing(Stroke::at))
        .forEach(s -> found.computeIfAbsent(of(groove, s), count -> new ArrayList<>()).add(s));
    return found;
  }

  /** The count of a stroke by its own word. */
  static Count of(Groove groove, Stroke stroke) {
    return CountNames.of(stroke.slot(), groove.meter(stroke.bar()));
  }

  /** The count of a stroke with the words that the lesson is counted with, as it is read. */
  static String said(Groove groove, Stroke stroke) {
    CountingWords words = groove.setting().wording().read();
    Meter meter = groove.meter(stroke.bar());
    return words.goesThrough(meter)
        ? of(groove, stroke).toString()
        : new CountLabels(words).full(stroke.slot(), meter);
  }

  /** The counts with words of the lesson in some bars, and what they mean. */
  static Map<String, Count> said(Groove groove, Set<Integer> bars) {
    CountingWords words = groove.setting().wording().read();
    Map<String, Count> found = new LinkedHashMap<>();
    int beats = bars.stream().mapToInt(bar -> groove.meter(bar).beatCount()).max().orElse(0);
    for (int beat = 1; beat <= beats; beat++) {
      for (String word : words.all()) {
        List<CountingWords.Meaning> meanings = words.meanings(word);
        if (!isOurs(word) && meanings.size() == 1) {
          CountingWords.Meaning one = meanings.get(0);
          found.put(beat + word, new Count(beat, one.syllable(), List.of(), one.division()));
        }
      }
    }
    return found;
  }

  /** The words of the lesson that are none of our syllables. */
  static List<String> everySaid(Groove groove) {
    return groove.setting().wording().read().all().stream().filter(word -> !isOurs(word)).toList();
  }

  private static boolean isOurs(String word) {
    return word.equals("e") || word.equals("&") || word.equals("a");
  }

  /**
   * The counts that can be read in some of the bars: the slots of the words that are there, and the
   * plain reading of beats without any. A count that two words of a bar read differently is given
   * with the division named, once for each.
   */
  static List<Count> readable(Groove groove, Set<Integer> bars) {
    Map<Count, Time> found = new LinkedHashMap<>();
    for (int bar : bars) {
      Meter meter = groove.meter(bar);
      for (int beat = 0; beat < meter.beatCount(); beat++) {
        Set<Integer> divisions = new TreeSet<>();
        for (Stroke stroke : groove.written()) {
          Division division = stroke.slot().division();
          if (stroke.bar() == bar && division.beat() == beat && division.beats() == 1) {
            divisions.add(division.slots());
          }
        }
        read(meter, beat, divisions, found);
      }
    }
    return inOrder(found);
  }

  /** The plain reading of a whole bar. */
  static List<Count> plain(Meter meter) {
    Map<Count, Time> found = new LinkedHashMap<>();
    for (int beat = 0; beat < meter.beatCount(); beat++) {
      read(meter, beat, Set.of(), found);
    }
    return inOrder(found);
  }

  private static List<Count> inOrder(Map<Count, Time> found) {
    return found.entrySet().stream()
        .sorted(Map.Entry.comparingByValue())
        .map(Map.Entry::getKey)
        .toList();
  }

  private static void read(Meter meter, int beat, Set<Integer> divisions, Map<Count, Time> into) {
    Map<Time, Map<Integer, Count>> places = new TreeMap<>();
    Map<Count, Set<Time>> meanings = new LinkedHashMap<>();
    for (int slots : divisions) {
      for (Map.Entry<Count, Time> slot : slots(meter, beat, slots).entrySet()) {
        places.computeIfAbsent(slot.getValue(), place -> new TreeMap<>()).put(slots, slot.getKey());
        meanings.computeIfAbsent(slot.getKey(), word -> new LinkedHashSet<>()).add(slot.getValue());
      }
    }
    places.forEach(
        (at, names) -> {
          Map.Entry<Integer, Count> coarsest = names.entrySet().iterator().next();
          Count count = coarsest.getValue();
          boolean clear = meanings.getOrDefault(count, Set.of()).size() == 1;
          into.putIfAbsent(
              clear
                  ? count
                  : new Count(count.beat(), count.syllable(), count.places(), coarsest.getKey()),
              at);
        });
    // What no word of the beat has is read plainly.
    slots(meter, beat, Meter.isDotted(meter.beat(beat)) ? 3 : 4)
        .forEach(
            (count, at) -> {
              if (!meanings.containsKey(count)) {
                into.putIfAbsent(count, at);
              }
            });
  }

  private static Map<Count, Time> slots(Meter meter, int beat, int slots) {
    Map<Count, Time> found = new LinkedHashMap<>();
    Division division = new Division(beat, 1, slots);
    for (int slot = 0; slot < slots; slot++) {
      Time at = meter.beatStart(beat).plus(meter.beat(beat).times(slot).over(slots));
      found.put(CountNames.of(division, at, meter), at);
    }
    return found;
  }
}
