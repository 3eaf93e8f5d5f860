package tabor.perform;

import java.math.BigInteger;
import tabor.rhythm.Time;

/**
 * Sums of times whose exact denominators may outgrow 64 bits: nine-digit percentages, groups nested
 * eight deep. Such times are rounded to a 2⁻³⁰th of a whole note, far below a tick and a
 * microsecond; all others stay exact.
 */
final class BoundedTime {
  private static final long GRID = 1L << 30;

  /** Denominators up to this leave room for every sum that a performance needs. */
  private static final long EXACT = 1L << 24;

  private BoundedTime() {}

  static Time plus(Time a, Time b) {
    try {
      return a.plus(b);
    } catch (ArithmeticException e) {
      return rounded(a).plus(rounded(b));
    }
  }

  static Time minus(Time a, Time b) {
    return plus(a, b.negate());
  }

  /** True for a time that needs no rounding. */
  static boolean isExact(Time time) {
    return time.den() <= EXACT;
  }

  /** The nearest time on the grid. */
  static Time rounded(Time time) {
    if (GRID % time.den() == 0) {
      return time;
    }
    BigInteger two = BigInteger.valueOf(time.num()).multiply(BigInteger.valueOf(2 * GRID));
    BigInteger den = BigInteger.valueOf(time.den());
    BigInteger[] parts = two.add(den).divideAndRemainder(den.shiftLeft(1));
    BigInteger floor = parts[1].signum() < 0 ? parts[0].subtract(BigInteger.ONE) : parts[0];
    return Time.of(floor.longValueExact(), GRID);
  }

  /** A length that is no less than the grid can say. */
  static Time length(Time time) {
    return time.sign() > 0 ? time : Time.of(1, GRID);
  }
}
