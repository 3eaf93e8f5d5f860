package tabor.pattern;

/**
 * One place of a built-in pattern.
 *
 * @param letter {@code r}, {@code l}, {@code x} or {@code .} for silence
 * @param accent true for an accent
 * @param small how many small strokes come before it, 0 to 2
 * @param diddle true if two strokes of the hand fill the place
 * @param buzz true if it is pressed
 */
public record Place(char letter, boolean accent, int small, boolean diddle, boolean buzz) {
  /** The same place with the hands exchanged. */
  public Place mirrored() {
    char other = letter == 'r' ? 'l' : letter == 'l' ? 'r' : letter;
    return new Place(other, accent, small, diddle, buzz);
  }
}
