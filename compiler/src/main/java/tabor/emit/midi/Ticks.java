package tabor.emit.midi;

import java.math.BigInteger;
import java.util.Collection;
import tabor.rhythm.Time;

/**
 * From whole notes to ticks.
 *
 * @param division ticks in a quarter note
 * @param exact true if every written place falls on a tick
 */
public record Ticks(int division, boolean exact) {
  /**
   * Ticks for files whose places have no common division that the format can say: 2⁵·3³·5·7, so
   * that most of them still fall on a tick.
   */
  static final int ROUNDING = 30_240;

  /** What sequencers are used to; also fine enough for grace notes at 25 quarters per minute. */
  private static final int USUAL = 960;

  /** Ticks at places of a smaller denominator are worked out in a long. */
  private static final long SMALL = 1L << 40;

  private static final BigInteger LARGEST = BigInteger.valueOf(Smf.LARGEST_DIVISION);

  /** The division of no music at all. */
  static final BigInteger NONE = BigInteger.ONE;

  /** The least common multiple of what was needed so far and what one more place needs. */
  static BigInteger need(BigInteger soFar, Time place) {
    long more = place.times(4).den();
    if (soFar.bitLength() < Long.SIZE && soFar.longValue() % more == 0) {
      return soFar;
    }
    BigInteger big = BigInteger.valueOf(more);
    return soFar.divide(soFar.gcd(big)).multiply(big);
  }

  /** True if no division of the format holds all places. */
  static boolean tooFine(BigInteger need) {
    return need.compareTo(LARGEST) > 0;
  }

  /**
   * The smallest multiple of {@code need} that has at least 960 ticks in a quarter note and none
   * longer than 2.5 ms, so that grace notes fit their 25 to 30 ms; where there is none, the largest
   * multiple.
   *
   * @param need the least common multiple of the denominators of all places, in quarter notes
   * @param tempi every tempo of the file in quarter notes per minute
   */
  static Ticks of(BigInteger need, Collection<Time> tempi) {
    if (tooFine(need)) {
      return new Ticks(ROUNDING, false);
    }
    int base = need.intValueExact();
    long fine = USUAL;
    for (Time tempo : tempi) {
      fine = Math.max(fine, Time.of(24_000).over(tempo).floor() + 1);
    }
    long wanted = (fine + base - 1) / base;
    return new Ticks(base * (int) Math.min(wanted, Smf.LARGEST_DIVISION / base), true);
  }

  /** The tick nearest to a place, in whole notes from the start. */
  public long at(Time position) {
    long whole = position.floor();
    Time rest = position.fraction();
    return Math.addExact(Math.multiplyExact(whole, 4L * division), part(rest));
  }

  /** The tick nearest to a place in the first whole note. */
  private long part(Time rest) {
    if (rest.den() < SMALL) {
      return (8L * division * rest.num() + rest.den()) / (2 * rest.den());
    }
    BigInteger two = BigInteger.valueOf(8L * division).multiply(BigInteger.valueOf(rest.num()));
    BigInteger den = BigInteger.valueOf(rest.den());
    return two.add(den).divide(den.shiftLeft(1)).longValueExact();
  }
}
