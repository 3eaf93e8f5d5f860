package tabor.pattern;

/**
 * One place of a built-in pattern.
 *
 * @param letter {@code r}, {@code l}, {@code x} or {@code .} for silence
 * @param accent true for an accent
 * @param graceNotes how many grace notes come before it, 0 to 2
 * @param diddle true if two strokes of the hand fill the place
 * @param buzz true if it is pressed
 */
public record PatternPlace(
    char letter, boolean accent, int graceNotes, boolean diddle, boolean buzz) {
  /** The same place with the hands exchanged. */
  public PatternPlace mirrored() {
    char other = letter == 'r' ? 'l' : letter == 'l' ? 'r' : letter;
    return new PatternPlace(other, accent, graceNotes, diddle, buzz);
  }
}
