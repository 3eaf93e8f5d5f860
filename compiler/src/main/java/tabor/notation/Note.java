package tabor.notation;

import java.util.List;
import tabor.groove.Stroke;
import tabor.kit.StaffPlace;
import tabor.kit.Surface;

/**
 * One note head and what is written at it.
 *
 * @param strokes what it stands for: one stroke, or both limbs of a pair on the same surface
 * @param ghost true for parentheses
 * @param accent true for an accent
 * @param graceNotes how many grace notes stand before it: 0 to 3
 * @param slashes tremolo strokes through the stem, beside the beams: of a diddle or an open roll
 * @param buzz true for a press roll
 * @param choke true if the cymbal is caught
 * @param rimshot true for a rimshot
 * @param hihat the sign above it
 * @param tieIn true if it goes on from the note before and is not struck again
 * @param tieOut true if it goes on in the next note
 * @param changed true if the step changed it
 */
public record Note(
    List<Stroke> strokes,
    boolean ghost,
    boolean accent,
    int graceNotes,
    int slashes,
    boolean buzz,
    boolean choke,
    boolean rimshot,
    Hihat hihat,
    boolean tieIn,
    boolean tieOut,
    boolean changed) {
  /** NoteSigns for how far the hi-hat is open. */
  public enum Hihat {
    NONE,
    OPEN,
    HALF,
    /** Only where the ear would still expect an open hi-hat. */
    CLOSED
  }

  /** Copies the list; throws {@link IllegalArgumentException} for a note without a stroke. */
  public Note {
    strokes = List.copyOf(strokes);
    if (strokes.isEmpty()) {
      throw new IllegalArgumentException("a note without a stroke");
    }
  }

  /** What is struck. */
  public Surface surface() {
    return strokes.get(0).surface();
  }

  /** Where it stands on the staff. */
  public StaffPlace place() {
    return surface().place();
  }

  /** The shape of its head. */
  public Surface.Head head() {
    return surface().head();
  }
}
