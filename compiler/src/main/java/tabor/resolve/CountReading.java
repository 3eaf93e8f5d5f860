package tabor.resolve;

import tabor.groove.Stroke;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;

/**
 * One way to read a count.
 *
 * @param place distance from the barline
 * @param length of the place
 * @param slot where that is; its division is the one the count was read in
 * @param inGroup true if a place within a group is meant, else the whole slot
 */
public record CountReading(Time place, Time length, Slot slot, boolean inGroup) {
  /**
   * True if a stroke of the bar stands where the reading says; a slot takes the whole group in it.
   *
   * @param slotStart where the stroke's slot starts
   */
  boolean meets(Stroke stroke, Time slotStart) {
    if (stroke.at().equals(place)) {
      return true;
    }
    if (!inGroup) {
      return slotStart.equals(place);
    }
    Slot own = stroke.slot();
    int depth = slot.parts().size();
    return own.parts().size() >= depth
        && own.division().equals(slot.division())
        && own.index() == slot.index()
        && own.parts().subList(0, depth).equals(slot.parts());
  }
}
