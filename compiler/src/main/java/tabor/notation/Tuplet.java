package tabor.notation;

import tabor.rhythm.Time;

/**
 * A tuplet: so many notes in the time of so many others of the same value.
 *
 * @param actual how many there are, 1 or more: the number that is printed
 * @param normal in the time of how many, 1 or more
 * @param unit the value that both numbers count
 * @param bracket true if a bracket is needed because no beam of its own holds it together
 */
public record Tuplet(long actual, long normal, Written.Type unit, boolean bracket) {
  /** Throws {@link IllegalArgumentException} unless both numbers are above zero. */
  public Tuplet {
    if (actual < 1 || normal < 1) {
      throw new IllegalArgumentException("tuplet " + actual + ":" + normal);
    }
  }

  /** What it makes of a written value: two thirds in a triplet. */
  public Time ratio() {
    return Time.of(normal, actual);
  }
}
