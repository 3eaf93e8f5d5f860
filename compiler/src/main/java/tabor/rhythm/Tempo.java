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

  /** Quarter notes per minute, whatever is counted. */
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

  /** {@code dotted quarter = 60}; the number has at most two places after the point. */
  public String words() {
    return beatWords() + " = " + perMinute.decimal();
  }

  /** What is counted: {@code dotted quarter}. */
  public String beatWords() {
    boolean dotted = Meter.isDotted(beat);
    Time plain = dotted ? beat.times(Time.of(2, 3)) : beat;
    String name =
        switch (plain.toString()) {
          case "1" -> "whole";
          case "1/2" -> "half";
          case "1/4" -> "quarter";
          case "1/8" -> "eighth";
          case "1/16" -> "sixteenth";
          default -> plain.toString();
        };
    return dotted ? "dotted " + name : name;
  }
}
