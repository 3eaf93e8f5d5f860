package tabor.notation;

import java.util.List;
import tabor.groove.Stroke;
import tabor.rhythm.Time;

/**
 * An event before beams and signs.
 *
 * @param start distance from the barline
 * @param length actual
 * @param written note value
 * @param tuplets what it stands in, outermost first; compared by identity
 * @param struck what is struck there
 * @param held what goes on from before
 * @param onward those of both that go on in the next event
 */
record Draft(
    Time start,
    Time length,
    Written written,
    List<RhythmNode> tuplets,
    List<Stroke> struck,
    List<Stroke> held,
    List<Stroke> onward) {

  boolean isRest() {
    return struck.isEmpty() && held.isEmpty();
  }

  Time end() {
    return start.plus(length);
  }

  int flags() {
    return isRest() ? 0 : written.type().flags();
  }
}
