package tabor.perform;

import java.math.BigInteger;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/** Between whole notes and the clock. One picosecond is far below what any output can say. */
final class Clock {
  static final long MILLI = 1_000_000_000L;
  static final long SECOND = 1000 * MILLI;

  private static final BigInteger PICOS = BigInteger.valueOf(SECOND);
  private static final BigInteger MOST = BigInteger.TEN.pow(18);

  private Clock() {}

  /** How long so many whole notes last, in picoseconds, rounded; no more than 10^18. */
  static long picos(Time length, Tempo tempo) {
    Time whole = tempo.secondsPerWhole();
    return rounded(
            big(length.num()).multiply(big(whole.num())).multiply(PICOS),
            big(length.den()).multiply(big(whole.den())))
        .min(MOST)
        .longValueExact();
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
