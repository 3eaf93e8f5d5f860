package tabor.groove;

import java.util.ArrayList;
import java.util.List;
import tabor.kit.Limb;
import tabor.rhythm.Time;

/**
 * A grace note of a flam, drag or ruff. The one of a flam and the two of a drag are by the other
 * limb of the pair; the three of a ruff alternate into the main stroke: l r l R. All are at the
 * ghost level, on the main stroke's surface.
 *
 * @param stroke the main stroke
 * @param limb who plays it
 * @param before how many grace notes from here to the main stroke: 1 for the last
 */
public record Grace(Stroke stroke, Limb limb, int before) {
  /**
   * From one grace note to the next, and from the last to the main stroke, in seconds: 27.5 ms
   * (common practice, no source: 25 to 30 ms).
   */
  public static final Time SECONDS = Time.of(11, 400);

  /** The grace notes of a stroke in order of time; none for most. */
  public static List<Grace> of(Stroke stroke) {
    int count = stroke.ornaments().graceNotes();
    if (count == 0) {
      return List.of();
    }
    List<Grace> notes = new ArrayList<>(count);
    for (int before = count; before >= 1; before--) {
      boolean alternates = count == 3 && before % 2 == 0;
      Limb limb = alternates ? stroke.limb() : stroke.limb().other();
      notes.add(new Grace(stroke, limb, before));
    }
    return notes;
  }
}
