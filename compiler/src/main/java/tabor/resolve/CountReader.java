package tabor.resolve;

import java.util.ArrayList;
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
import tabor.rhythm.Feel;
import tabor.rhythm.Slot;
import tabor.rhythm.Syllables;
import tabor.rhythm.Time;

/**
 * Reads counts in one bar: which places they may mean, by the divisions of the strokes that are
 * there. The target's own strokes have the first say, then all others, then the plain reading.
 */
record CountReader(SectionView view, int bar, Predicate<Stroke> target) {
  private BarGrid grid() {
    return view.grid(bar);
  }

  /** True if the count's beat exists in the bar. */
  boolean beatExists(Count count) {
    return count.beat() > view.firstBeat(bar) && count.beat() <= grid().beats();
  }

  /**
   * The different places that a count may mean, each read in its coarsest division, in order of
   * time; empty if the beat has no such syllable, slot or group.
   */
  List<CountReading> read(Count count) {
    if (!beatExists(count)) {
      return List.of();
    }
    int beat = count.beat() - 1;
    if (count.syllable() == Syllable.NONE && count.places().isEmpty() && count.division() == 0) {
      Division whole = new Division(beat, 1, 1);
      Slot slot = new Slot(whole, 0, List.of());
      return List.of(new CountReading(grid().start(beat), grid().length(whole), slot, false));
    }
    if (count.division() != 0) {
      return count.division() > SectionDraft.FINEST
          ? List.of()
          : readings(count, Set.of(new Division(beat, 1, count.division())));
    }
    Set<Division> own = new LinkedHashSet<>();
    Set<Division> others = new LinkedHashSet<>();
    for (Stroke stroke : view.inBar(bar)) {
      Division division = stroke.slot().division();
      if (division.beat() <= beat && beat < division.beat() + division.beats()) {
        (target.test(stroke) ? own : others).add(division);
      }
    }
    List<CountReading> found = readings(count, own);
    if (found.isEmpty()) {
      found = readings(count, others);
    }
    return found.isEmpty() ? readings(count, Set.of(plain(count.syllable(), beat))) : found;
  }

  /** The division that a count is read in where no stroke has a say. */
  private Division plain(Syllable syllable, int beat) {
    if (syllable == Syllable.NONE) {
      return new Division(beat, 1, grid().dotted(beat) ? 6 : 4);
    }
    if (grid().dotted(beat)) {
      return new Division(beat, 1, 3);
    }
    Feel feel = view.feel();
    boolean swung = !feel.isStraight() && feel.unit() == Feel.Unit.EIGHTHS;
    return new Division(
        beat, 1, syllable == Syllable.AND ? 2 : syllable == Syllable.A && swung ? 3 : 4);
  }

  /** One reading for each place, the coarsest, in order of time. */
  private List<CountReading> readings(Count count, Set<Division> divisions) {
    Map<Time, CountReading> byPlace = new LinkedHashMap<>();
    for (Division division : divisions) {
      CountReading reading = reading(count, division);
      if (reading != null) {
        byPlace.merge(reading.place(), reading, CountReader::coarser);
      }
    }
    List<CountReading> found = new ArrayList<>(byPlace.values());
    found.sort((a, b) -> a.place().compareTo(b.place()));
    return found;
  }

  private static CountReading coarser(CountReading a, CountReading b) {
    return a.slot().division().slots() <= b.slot().division().slots() ? a : b;
  }

  private @Nullable CountReading reading(Count count, Division division) {
    int beat = count.beat() - 1;
    int index;
    List<Integer> path = count.places();
    if (count.syllable() != Syllable.NONE || path.isEmpty()) {
      index =
          division.beats() == 1
              ? Syllables.slot(division.slots(), grid().dotted(beat), count.syllable())
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
      int of = groupSize(slot);
      if (place < 1 || place > of) {
        return null;
      }
      List<Slot.Part> parts = new ArrayList<>(slot.parts());
      parts.add(new Slot.Part(place - 1, of));
      slot = new Slot(division, index, parts);
    }
    return new CountReading(grid().place(slot), grid().placeLength(slot), slot, !path.isEmpty());
  }

  /** How many places the group at a slot has, the target's own group first; 0 without a group. */
  private int groupSize(Slot slot) {
    int other = 0;
    int depth = slot.parts().size();
    for (Stroke stroke : view.inBar(bar)) {
      Slot where = stroke.slot();
      if (where.parts().size() > depth
          && where.index() == slot.index()
          && where.division().equals(slot.division())
          && where.parts().subList(0, depth).equals(slot.parts())) {
        other = where.parts().get(depth).of();
        if (target.test(stroke)) {
          return other;
        }
      }
    }
    return other;
  }

  /** True if a stroke stands where a reading says. */
  boolean meets(Stroke stroke, CountReading reading) {
    return reading.meets(stroke, slotStart(stroke));
  }

  /** Where a stroke's slot starts: its own place, or the place of the group that it is in. */
  Time slotStart(Stroke stroke) {
    return stroke.slot().parts().isEmpty() ? stroke.at() : grid().slotStart(stroke.slot());
  }

  /** True if a stroke is at this syllable of its own beat, by its own division. */
  boolean hasSyllable(Stroke stroke, Syllable syllable) {
    Slot slot = stroke.slot();
    Division division = slot.division();
    if (division.beats() == 1) {
      return Syllables.slot(division.slots(), grid().dotted(division.beat()), syllable)
          == slot.index();
    }
    // Over several beats the syllables stay the meter's own.
    Time at = slotStart(stroke);
    int beat = grid().meter().beatAt(at);
    if (syllable == Syllable.NONE) {
      return grid().start(beat).equals(at);
    }
    Division plain = plain(syllable, beat);
    int index = Syllables.slot(plain.slots(), grid().dotted(beat), syllable);
    return index >= 0 && grid().slotStart(plain, index).equals(at);
  }
}
