package tabor.notation;

import java.util.List;
import java.util.Map;
import tabor.rhythm.Time;

/**
 * One bar. The events of each voice follow each other without a gap and fill it exactly.
 *
 * @param number 1-based; 0 is the pickup
 * @param repeat true if it is written as a repeat of the bar before; its events are there all the
 *     same
 * @param start where its first event starts, in whole notes from the barline: zero, or in a pickup
 *     the part of a whole bar that is not there, so that an event's start is its strokes' own place
 * @param length in whole notes
 * @param hands the upper voice in order of time, stems up
 * @param feet the lower voice in order of time, stems down
 * @param counts rows of what is counted aloud, by place; one for each division where a beat is
 *     divided in two ways at once
 */
public record Bar(
    int number,
    boolean repeat,
    Time start,
    Time length,
    List<Event> hands,
    List<Event> feet,
    List<Map<Time, String>> counts) {
  /** Copies the lists. */
  public Bar {
    hands = List.copyOf(hands);
    feet = List.copyOf(feet);
    counts = List.copyOf(counts);
  }

  /** True for a bar that is shorter than the meter says and stands before bar 1. */
  public boolean isPickup() {
    return number == 0;
  }

  /** The events of one voice. */
  public List<Event> events(Voice voice) {
    return switch (voice) {
      case HANDS -> hands;
      case FEET -> feet;
    };
  }
}
