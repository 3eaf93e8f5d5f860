package tabor.kit;

/**
 * A place on the five-line staff, named as in the treble clef (line 1 is E4, line 5 is F5), which
 * is how MusicXML reads a percussion clef.
 *
 * @param step {@code 'A'} to {@code 'G'}
 * @param octave 0 to 9
 */
public record StaffPlace(char step, int octave) {
  /** Throws {@link IllegalArgumentException} for a step or octave out of range. */
  public StaffPlace {
    if (step < 'A' || step > 'G' || octave < 0 || octave > 9) {
      throw new IllegalArgumentException("staff place " + step + octave);
    }
  }

  /** Half spaces above the bottom line: 0 for line 1, 8 for line 5, negative below the staff. */
  public int halfSpaces() {
    return octave * 7 + "CDEFGAB".indexOf(step) - (4 * 7 + 2);
  }

  /** {@code C5}. */
  @Override
  public String toString() {
    return "" + step + octave;
  }
}
