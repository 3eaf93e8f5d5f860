package tabor.resolve;

import tabor.rhythm.Division;
import tabor.rhythm.Meter;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;

/** A meter's beats with their places worked out once. */
final class BarGrid {
  private final Meter meter;
  private final Time[] starts;

  BarGrid(Meter meter) {
    this.meter = meter;
    this.starts = new Time[meter.beatCount() + 1];
    Time at = Time.ZERO;
    for (int i = 0; i < meter.beatCount(); i++) {
      starts[i] = at;
      at = at.plus(meter.beat(i));
    }
    starts[meter.beatCount()] = at;
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
    return new Slot(division, (int) part.num(), java.util.List.of());
  }
}
