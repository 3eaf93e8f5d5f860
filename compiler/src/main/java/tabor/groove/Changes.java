package tabor.groove;

import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * What a step changed against the section it came from. Found by comparing the two, not from the
 * edits: whatever way it was written, the same change reads the same.
 *
 * @param words one phrase for each part that changed, such as {@code right hand: now on the ride
 *     bell}, hands first; empty where nothing changed
 * @param strokes the section's strokes that are new or other than they were
 * @param gone how many strokes of the base are left out
 */
public record Changes(List<String> words, Set<Stroke> strokes, int gone) {
  /** No change; also what a groove has. */
  public static final Changes NONE = new Changes(List.of(), Set.of(), 0);

  /** Copies the collections. */
  public Changes {
    words = List.copyOf(words);
    strokes = Collections.unmodifiableSet(new HashSet<>(strokes));
  }

  /** What a step changed; {@link #NONE} for a groove. */
  public static Changes of(Groove step) {
    return in(step, Terms.PLAIN);
  }

  /** The same in the words of the section's printed page. */
  public static Changes printed(Groove step) {
    return in(step, Terms.of(step));
  }

  private static Changes in(Groove step, Terms terms) {
    Groove base = step.base();
    if (base == null) {
      return NONE;
    }
    Comparison found = Comparison.of(base, step);
    return new Changes(StepWords.of(found, terms), found.shown(), found.dropped().size());
  }

  /** How many strokes are new, other, or left out. */
  public int count() {
    return strokes.size() + gone;
  }

  /** All phrases in one line: {@code right hand: now on the ride bell; kick: added on 1}. */
  public String text() {
    return String.join("; ", words);
  }
}
