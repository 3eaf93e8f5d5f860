package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import tabor.rhythm.Division;
import tabor.rhythm.Meter;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;

/** A meter's beats with their places worked out once. */
final class BarGrid {
  /** Divisions up to this many slots of one beat are worked out once. */
  private static final int KEPT = 12;

  private static volatile BarGrid latest = new BarGrid(Meter.COMMON);

  private final Meter meter;
  private final Time[] starts;
  private final Word[] words;

  /** The grid of a meter; the one made last is used again. */
  static BarGrid of(Meter meter) {
    BarGrid grid = latest;
    if (grid.meter != meter && !grid.meter.equals(meter)) {
      grid = new BarGrid(meter);
      latest = grid;
    }
    return grid;
  }

  private BarGrid(Meter meter) {
    this.meter = meter;
    this.words = new Word[meter.beatCount() * KEPT];
    this.starts = new Time[meter.beatCount() + 1];
    Time at = Time.ZERO;
    for (int i = 0; i < meter.beatCount(); i++) {
      starts[i] = at;
      at = at.plus(meter.beat(i));
    }
    starts[meter.beatCount()] = at;
  }

  /**
   * A word's slots with their places.
   *
   * @param slots each slot as the place of a stroke that has it to itself
   * @param starts their distances from the barline
   * @param length of each
   */
  record Word(List<Slot> slots, List<Time> starts, Time length) {}

  /** The slots of a division. */
  Word word(Division division) {
    if (division.beats() > 1 || division.slots() > KEPT) {
      return newWord(division);
    }
    int index = division.beat() * KEPT + division.slots() - 1;
    Word word = words[index];
    if (word == null) {
      word = newWord(division);
      words[index] = word;
    }
    return word;
  }

  private Word newWord(Division division) {
    Time one = slotLength(division);
    List<Slot> slots = new ArrayList<>(division.slots());
    List<Time> places = new ArrayList<>(division.slots());
    for (int i = 0; i < division.slots(); i++) {
      slots.add(new Slot(division, i, List.of()));
      places.add(starts[division.beat()].plus(one.times(i)));
    }
    return new Word(slots, places, one);
  }

  Meter meter() {
    return meter;
  }

  int beats() {
    return meter.beatCount();
  }

  /** Start of a 0-based beat; the bar's end for the beat after the last. */
  Time start(int beat) {
    return starts[beat];
  }

  Time length(Division division) {
    return starts[division.beat() + division.beats()].minus(starts[division.beat()]);
  }

  /** Length of a top-level slot. */
  Time slotLength(Division division) {
    return length(division).over(division.slots());
  }

  Time slotStart(Division division, int index) {
    return starts[division.beat()].plus(length(division).times(index).over(division.slots()));
  }

  Time slotStart(Slot slot) {
    return slotStart(slot.division(), slot.index());
  }

  /** Start of a stroke's own place, down through its groups. */
  Time place(Slot slot) {
    Time at = slotStart(slot);
    Time length = slotLength(slot.division());
    for (Slot.Part part : slot.parts()) {
      length = length.over(part.of());
      at = at.plus(length.times(part.index()));
    }
    return at;
  }

  /** Length of a stroke's own place, down through its groups. */
  Time placeLength(Slot slot) {
    Time length = slotLength(slot.division());
    for (Slot.Part part : slot.parts()) {
      length = length.over(part.of());
    }
    return length;
  }

  /** True if the beat is a dotted note value. */
  boolean dotted(int beat) {
    return Meter.isDotted(meter.beat(beat));
  }

  /** The fewest equal slots of its beat that hold a place of the bar. */
  Slot fewest(Time at) {
    int beat = meter.beatAt(at);
    Time part = at.minus(starts[beat]).over(meter.beat(beat));
    Division division = new Division(beat, 1, (int) part.den());
    return new Slot(division, (int) part.num(), List.of());
  }
}
