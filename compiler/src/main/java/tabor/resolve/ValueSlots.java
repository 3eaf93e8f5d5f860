package tabor.resolve;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tabor.rhythm.Division;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;

/**
 * The slots that places of one note value have in the beats of a bar. A value that does not divide
 * the beat reads like a word spread over the fewest beats that it divides.
 */
final class ValueSlots {
  private final BarGrid grid;
  private final Map<Time, Slot> known = new HashMap<>();

  ValueSlots(BarGrid grid, Time value) {
    this.grid = grid;
    int beat = 0;
    while (beat < grid.beats()) {
      int beats = 1;
      while (beat + beats <= grid.beats() && !fits(beat, beats, value)) {
        beats++;
      }
      if (beat + beats > grid.beats()) {
        beat++;
        continue;
      }
      int slots = (int) grid.length(new Division(beat, beats, 1)).over(value).num();
      Division division = new Division(beat, beats, slots);
      for (int i = 0; i < slots; i++) {
        known.putIfAbsent(grid.slotStart(division, i), new Slot(division, i, List.of()));
      }
      beat += beats;
    }
  }

  private boolean fits(int beat, int beats, Time value) {
    return grid.length(new Division(beat, beats, 1)).over(value).isWhole();
  }

  /** The slot at a place; where no word fits there, the fewest equal slots that hold it. */
  Slot at(Time place) {
    Slot slot = known.get(place);
    return slot == null ? grid.fewest(place) : slot;
  }
}
