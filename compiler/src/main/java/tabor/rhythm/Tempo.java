package tabor.rhythm;

/**
 * A tempo.
 *
 * @param beat what is counted, in whole notes
 * @param perMinute how many of them pass in a minute, more than 0
 */
public record Tempo(Time beat, Time perMinute) {
  /** Throws {@link IllegalArgumentException} unless both are above zero. */
  public Tempo {
    if (beat.sign() <= 0 || perMinute.sign() <= 0) {
      throw new IllegalArgumentException("tempo " + beat + " = " + perMinute);
    }
  }

  /** Quarter notes a minute, whatever is counted. */
  public Time quartersPerMinute() {
    return perMinute.times(beat).times(4);
  }

  /** How long a whole note lasts, in seconds. */
  public Time secondsPerWhole() {
    return Time.of(60).over(perMinute.times(beat));
  }

  /** The same counted value at another speed. */
  public Tempo at(Time otherPerMinute) {
    return new Tempo(beat, otherPerMinute);
  }
}
