package tabor.rhythm;

/**
 * How finely a stretch of a bar is divided: the word that a stroke was written in, or the reading
 * of the count that placed it.
 *
 * @param beat the 0-based beat that the word starts on
 * @param beats how many beats it spreads over, 1 or more
 * @param slots into how many equal slots at its top level, 1 or more
 */
public record Division(int beat, int beats, int slots) {
  /** Throws {@link IllegalArgumentException} for a number out of range. */
  public Division {
    if (beat < 0 || beats < 1 || slots < 1) {
      throw new IllegalArgumentException("division " + beat + " " + beats + " " + slots);
    }
  }

  /** True if a bar of this meter has the beats of the word. */
  public boolean isInside(Meter meter) {
    return beat + beats <= meter.beatCount();
  }
}
