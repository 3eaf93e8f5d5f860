package tabor.perform;

import java.math.BigInteger;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/** Between whole notes and the clock. One picosecond is far below what any output can say. */
final class Clock {
  static final long MILLI = 1_000_000_000L;
  static final long SECOND = 1000 * MILLI;

  private static final BigInteger PICOS = BigInteger.valueOf(SECOND);

  /** So many whole notes or less are no more than 10^18 picoseconds and are counted in a long. */
  private static final long SMALL = 1_000_000;

  private static final BigInteger MOST = BigInteger.TEN.pow(18);

  private Clock() {}

  /** How long so many whole notes last, in picoseconds, rounded; no more than 10^18. */
  static long picos(Time length, Tempo tempo) {
    Time whole = tempo.secondsPerWhole();
    long top = length.num() * whole.num();
    long bottom = length.den() * whole.den();
    if (fits(length.num(), whole.num(), SMALL) && fits(length.den(), whole.den(), SECOND)) {
      return Math.floorDiv(top * SECOND * 2 + bottom, bottom * 2);
    }
    return rounded(
            big(length.num()).multiply(big(whole.num())).multiply(PICOS),
            big(length.den()).multiply(big(whole.den())))
        .min(MOST)
        .longValueExact();
  }

  /** True if the product of two numbers is no more than {@code most}, and neither below zero. */
  private static boolean fits(long a, long b, long most) {
    return a >= 0 && b >= 0 && Math.multiplyHigh(a, b) == 0 && a * b >= 0 && a * b <= most;
  }

  /**
   * How many whole notes so many picoseconds last, more than none: on a grid of halves, quarters,
   * eighths … of a whole note that is finer than half a millisecond, so that what is timed by the
   * clock keeps a small denominator.
   */
  static Time wholes(long picos, Tempo tempo) {
    Time whole = tempo.secondsPerWhole();
    BigInteger grid = BigInteger.valueOf(64);
    BigInteger wholePicos = big(whole.num()).multiply(PICOS).divide(big(whole.den()));
    while (grid.multiply(big(MILLI / 2)).compareTo(wholePicos) < 0 && grid.bitLength() < 30) {
      grid = grid.shiftLeft(1);
    }
    BigInteger steps =
        rounded(
            big(picos).multiply(big(whole.den())).multiply(grid), big(whole.num()).multiply(PICOS));
    return Time.of(steps.min(MOST).max(BigInteger.ONE).longValueExact(), grid.longValueExact());
  }

  private static BigInteger big(long number) {
    return BigInteger.valueOf(number);
  }

  /** The nearest whole number to a quotient, halves upwards; {@code bottom} is above 0. */
  private static BigInteger rounded(BigInteger top, BigInteger bottom) {
    BigInteger twice = bottom.shiftLeft(1);
    BigInteger[] parts = top.shiftLeft(1).add(bottom).divideAndRemainder(twice);
    return parts[1].signum() < 0 ? parts[0].subtract(BigInteger.ONE) : parts[0];
  }
}
