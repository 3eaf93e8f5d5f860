package tabor.resolve;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.groove.Stroke;
import tabor.rhythm.Count;
import tabor.rhythm.Count.Syllable;
import tabor.rhythm.Division;
import tabor.rhythm.Slot;
import tabor.rhythm.Syllables;
import tabor.rhythm.Time;

/**
 * Reads counts: which places of a bar they may mean, by the divisions of the strokes that are
 * there. The target's own strokes have the first say, then all others, then the plain reading.
 */
final class CountReader {
  /**
   * One way to read a count.
   *
   * @param place distance from the barline
   * @param length of the place
   * @param slot where that is; its division is the one the count was read in
   * @param inGroup true if a place within a group is meant, else the whole slot
   */
  record Reading(Time place, Time length, Slot slot, boolean inGroup) {}

  private final BarGrid grid;
  private final Work work;

  CountReader(Work work) {
    this.work = work;
    this.grid = work.grid;
  }

  /** True if the count's beat exists in a bar. */
  boolean beatExists(Count count, int bar) {
    return count.beat() >= 1
        && count.beat() <= grid.beats()
        && count.beat() - 1 >= work.firstBeat(bar);
  }

  /**
   * The different places that a count may mean in a bar, each read in its coarsest division; empty
   * if the beat has no such syllable, slot or group.
   *
   * @param strokes all strokes of the bar
   * @param target which of them are spoken of
   */
  List<Reading> read(Count count, int bar, List<Stroke> strokes, Predicate<Stroke> target) {
    if (!beatExists(count, bar)) {
      return List.of();
    }
    int beat = count.beat() - 1;
    if (count.syllable() == Syllable.NONE && count.places().isEmpty()) {
      Division whole = new Division(beat, 1, 1);
      Slot slot = new Slot(whole, 0, List.of());
      return List.of(new Reading(grid.start(beat), grid.length(whole), slot, false));
    }
    if (count.division() != 0) {
      if (count.division() > Work.FINEST) {
        return List.of();
      }
      Division named = new Division(beat, 1, count.division());
      return distinct(readings(count, Set.of(named), strokes, target));
    }
    Set<Division> own = new LinkedHashSet<>();
    Set<Division> others = new LinkedHashSet<>();
    for (Stroke stroke : strokes) {
      Division division = stroke.slot().division();
      if (division.beat() <= beat && beat < division.beat() + division.beats()) {
        (target.test(stroke) ? own : others).add(division);
      }
    }
    List<Reading> found = readings(count, own, strokes, target);
    if (found.isEmpty()) {
      found = readings(count, others, strokes, target);
    }
    if (found.isEmpty()) {
      found = readings(count, Set.of(plain(count, beat)), strokes, target);
    }
    return distinct(found);
  }

  /** The division that a count is read in where no stroke has a say. */
  private Division plain(Count count, int beat) {
    if (count.syllable() == Syllable.NONE) {
      return new Division(beat, 1, grid.dotted(beat) ? 6 : 4);
    }
    if (grid.dotted(beat)) {
      return new Division(beat, 1, 3);
    }
    return new Division(beat, 1, count.syllable() == Syllable.AND ? 2 : 4);
  }

  private List<Reading> readings(
      Count count, Set<Division> divisions, List<Stroke> strokes, Predicate<Stroke> target) {
    List<Reading> found = new ArrayList<>();
    for (Division division : divisions) {
      Reading reading = reading(count, division, strokes, target);
      if (reading != null) {
        found.add(reading);
      }
    }
    return found;
  }

  private @Nullable Reading reading(
      Count count, Division division, List<Stroke> strokes, Predicate<Stroke> target) {
    int beat = count.beat() - 1;
    int index;
    List<Integer> path = count.places();
    if (count.syllable() != Syllable.NONE) {
      index =
          division.beats() == 1
              ? Syllables.slot(division.slots(), grid.dotted(beat), count.syllable())
              : -1;
    } else {
      index = division.beat() == beat && path.get(0) <= division.slots() ? path.get(0) - 1 : -1;
      path = path.subList(1, path.size());
    }
    if (index < 0) {
      return null;
    }
    Slot slot = new Slot(division, index, List.of());
    for (int place : path) {
      int of = groupSize(slot, strokes, target);
      if (place < 1 || place > of) {
        return null;
      }
      List<Slot.Part> parts = new ArrayList<>(slot.parts());
      parts.add(new Slot.Part(place - 1, of));
      slot = new Slot(division, index, parts);
    }
    return new Reading(grid.place(slot), grid.placeLength(slot), slot, !path.isEmpty());
  }

  /** How many places the group at a slot has, the target's own group first; 0 without a group. */
  private static int groupSize(Slot slot, List<Stroke> strokes, Predicate<Stroke> target) {
    int other = 0;
    for (Stroke stroke : strokes) {
      Slot where = stroke.slot();
      int depth = slot.parts().size();
      if (where.parts().size() > depth
          && where.index() == slot.index()
          && where.division().equals(slot.division())
          && where.parts().subList(0, depth).equals(slot.parts())) {
        if (target.test(stroke)) {
          return where.parts().get(depth).of();
        }
        other = where.parts().get(depth).of();
      }
    }
    return other;
  }

  /** One reading for each place, the coarsest, in order of time. */
  private static List<Reading> distinct(List<Reading> readings) {
    if (readings.size() < 2) {
      return readings;
    }
    Map<Time, Reading> byPlace = new LinkedHashMap<>();
    for (Reading reading : readings) {
      byPlace.merge(
          reading.place(),
          reading,
          (a, b) -> a.slot().division().slots() <= b.slot().division().slots() ? a : b);
    }
    List<Reading> found = new ArrayList<>(byPlace.values());
    found.sort(Comparator.comparing(Reading::place));
    return found;
  }

  /** True if a stroke stands where a reading says; a slot takes the whole group in it. */
  boolean meets(Stroke stroke, Reading reading) {
    if (reading.inGroup()) {
      Slot slot = stroke.slot();
      int depth = reading.slot().parts().size();
      return stroke.at().equals(reading.place())
          || (slot.parts().size() >= depth
              && slot.division().equals(reading.slot().division())
              && slot.index() == reading.slot().index()
              && slot.parts().subList(0, depth).equals(reading.slot().parts()));
    }
    return slotStart(stroke).equals(reading.place());
  }

  /** Where a stroke's slot starts: its own place, or the place of the group that it is in. */
  Time slotStart(Stroke stroke) {
    return stroke.slot().parts().isEmpty() ? stroke.at() : grid.slotStart(stroke.slot());
  }

  /** True if a stroke is at this syllable of its own beat, by its own division. */
  boolean hasSyllable(Stroke stroke, Syllable syllable) {
    Slot slot = stroke.slot();
    Division division = slot.division();
    if (division.beats() == 1) {
      return Syllables.slot(division.slots(), grid.dotted(division.beat()), syllable)
          == slot.index();
    }
    // Over several beats the syllables stay the meter's own.
    Time at = slotStart(stroke);
    int beat = work.meter().beatAt(at);
    Division plain = plain(Count.of(beat + 1, syllable), beat);
    int index =
        syllable == Syllable.NONE ? 0 : Syllables.slot(plain.slots(), grid.dotted(beat), syllable);
    return index >= 0 && grid.slotStart(plain, index).equals(at);
  }
}
