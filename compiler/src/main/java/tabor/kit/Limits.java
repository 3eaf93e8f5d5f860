package tabor.kit;

import tabor.rhythm.Time;

/**
 * What a player's limbs can do, each as a comfortable and an extreme figure. The defaults are
 * common practice, no source, and from memory; a file or a kit may set its own.
 *
 * @param hands single strokes per second of one hand
 * @param feet single strokes per second of one foot
 * @param doubles strokes per second within a double of one limb
 * @param reach speed of a hand between two surfaces, in centimetres per second
 */
public record Limits(Range hands, Range feet, Range doubles, Range reach) {
  /**
   * Two levels of one limit.
   *
   * @param comfortable what can be kept up
   * @param extreme what few can do for a moment; at least the comfortable figure
   */
  public record Range(Time comfortable, Time extreme) {
    /** Throws {@link IllegalArgumentException} unless 0 &lt; comfortable ≤ extreme. */
    public Range {
      if (comfortable.sign() <= 0 || extreme.before(comfortable)) {
        throw new IllegalArgumentException("limit " + comfortable + " to " + extreme);
      }
    }

    /** Whole figures. */
    public Range(int comfortable, int extreme) {
      this(Time.of(comfortable), Time.of(extreme));
    }
  }

  /** Limits of an adult who has played for some years. */
  public static final Limits DEFAULT =
      new Limits(new Range(7, 10), new Range(7, 9), new Range(14, 22), new Range(300, 450));
}
