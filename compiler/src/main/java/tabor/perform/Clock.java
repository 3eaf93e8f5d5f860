package tabor.perform;

import java.math.BigInteger;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/** Between whole notes and the clock. One picosecond is far below what any output can say. */
final class Clock {
  static final long MILLI = 1_000_000_000L;
  static final long SECOND = 1000 * MILLI;

  /** No more is answered. */
  private static final long MOST = 1_000_000_000_000_000_000L;

  private Clock() {}

  /** How long so many whole notes last, in picoseconds, rounded; no more than 10^18. */
  static long picos(Time length, Tempo tempo) {
    Time whole = tempo.secondsPerWhole();
    return rounded(length.num(), whole.num(), SECOND, length.den(), whole.den());
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
    long one = picos(Time.ONE, tempo);
    long grid = 64;
    while (grid * (MILLI / 2) < one && grid < 1L << 29) {
      grid *= 2;
    }
    long steps = rounded(picos, whole.den(), grid, whole.num(), SECOND);
    return Time.of(Math.max(1, steps), grid);
  }

  private static BigInteger big(long number) {
    return BigInteger.valueOf(number);
  }

  /**
   * The whole number nearest to a·b·c/(d·e), halves upwards, no more than 10^18; {@code c} is above
   * 50, the lower two above 0. In a long wherever nothing overflows there.
   */
  private static long rounded(long a, long b, long c, long d, long e) {
    if (fits(a, b, Long.MAX_VALUE) && fits(d, e, 4 * MOST / c) && a * b / (d * e) < MOST / c) {
      long bottom = d * e;
      return a * b / bottom * c + (a * b % bottom * c * 2 + bottom) / (bottom * 2);
    }
    BigInteger top = big(a).multiply(big(b)).multiply(big(c)).shiftLeft(1);
    BigInteger bottom = big(d).multiply(big(e));
    BigInteger[] parts = top.add(bottom).divideAndRemainder(bottom.shiftLeft(1));
    BigInteger down = parts[1].signum() < 0 ? parts[0].subtract(BigInteger.ONE) : parts[0];
    return down.min(big(MOST)).longValueExact();
  }
}
