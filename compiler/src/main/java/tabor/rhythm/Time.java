package tabor.rhythm;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * An exact time or length: a fraction in lowest terms, in whole notes unless a method says
 * otherwise. Both numbers are 64 bits wide, since places of one section in mixed divisions outgrow
 * 32 bits; results that do not fit throw {@link ArithmeticException}, which the limits on divisions
 * and bars keep out of reach.
 *
 * @param num numerator, of any sign
 * @param den denominator, 1 or more
 */
public record Time(long num, long den) implements Comparable<Time> {
  /** No time. */
  public static final Time ZERO = new Time(0, 1);

  /** A whole note; also the plain number one. */
  public static final Time ONE = new Time(1, 1);

  /** Throws {@link IllegalArgumentException} unless the fraction is in lowest terms. */
  public Time {
    if (den < 1) {
      throw new IllegalArgumentException("denominator " + den);
    }
  }

  /** {@code num/den} in lowest terms; {@code den} must not be 0. */
  public static Time of(long num, long den) {
    if (den == 0) {
      throw new ArithmeticException("a time over nothing");
    }
    if (num == 0) {
      return ZERO;
    }
    long g = gcd(Math.abs(num), Math.abs(den));
    long n = quotient(num, g);
    long d = quotient(den, g);
    return d < 0 ? new Time(-n, -d) : new Time(n, d);
  }

  /** A whole number. */
  public static Time of(long whole) {
    return whole == 0 ? ZERO : new Time(whole, 1);
  }

  /** Greatest common divisor of two numbers that are not negative; 1 for two zeros. */
  public static long gcd(long a, long b) {
    if ((a | b) >>> 31 != 0) {
      return b == 0 ? a : gcd(b, a % b);
    }
    // Nearly all our numbers are small, and small ones are divided much sooner.
    int x = (int) a;
    int y = (int) b;
    while (y != 0) {
      int rest = x % y;
      x = y;
      y = rest;
    }
    return Math.max(x, 1);
  }

  /** Least common multiple of two positive numbers. */
  public static long lcm(long a, long b) {
    return Math.multiplyExact(a / gcd(a, b), b);
  }

  /** Sum. */
  public Time plus(Time other) {
    if (num == 0) {
      return other;
    }
    if (other.num == 0) {
      return this;
    }
    if (den == other.den) {
      return of(Math.addExact(num, other.num), den);
    }
    long g = gcd(den, other.den);
    long scale = quotient(other.den, g);
    long left = Math.multiplyExact(num, scale);
    long right = Math.multiplyExact(other.num, quotient(den, g));
    return of(Math.addExact(left, right), Math.multiplyExact(den, scale));
  }

  /** The first by a divisor of it that is above zero. */
  private static long quotient(long number, long divisor) {
    if (divisor == 1) {
      return number;
    }
    return isSmall(number) && isSmall(divisor) ? (int) number / (int) divisor : number / divisor;
  }

  /** True if it fits into 32 bits: the quick compiler leaves arithmetic of 64 to the runtime. */
  private static boolean isSmall(long number) {
    return number == (int) number;
  }

  /** Difference. */
  public Time minus(Time other) {
    return plus(other.negate());
  }

  /** The same distance the other way. */
  public Time negate() {
    return num == 0 ? this : new Time(-num, den);
  }

  /** Product. */
  public Time times(Time other) {
    long a = gcd(Math.abs(num), other.den);
    long b = gcd(Math.abs(other.num), den);
    return of(
        Math.multiplyExact(quotient(num, a), quotient(other.num, b)),
        Math.multiplyExact(quotient(den, b), quotient(other.den, a)));
  }

  /** Product with a whole number. */
  public Time times(long factor) {
    long g = gcd(Math.abs(factor), den);
    return of(Math.multiplyExact(num, quotient(factor, g)), quotient(den, g));
  }

  /** Quotient; throws {@link ArithmeticException} for zero. */
  public Time over(Time other) {
    return times(other.inverse());
  }

  /** One over this; throws {@link ArithmeticException} for zero. */
  public Time inverse() {
    if (num == 0) {
      throw new ArithmeticException("one over nothing");
    }
    long top = num < 0 ? -den : den;
    return of(top, Math.abs(num));
  }

  /** Quotient by a whole number that is not 0. */
  public Time over(long divisor) {
    long g = gcd(Math.abs(num), Math.abs(divisor));
    return of(quotient(num, g), Math.multiplyExact(den, quotient(divisor, g)));
  }

  /** The largest whole number not above this. */
  public long floor() {
    return Math.floorDiv(num, den);
  }

  /** What is left above {@link #floor()}. */
  public Time fraction() {
    return of(Math.floorMod(num, den), den);
  }

  /** This time modulo a positive length: 0 or more and less than {@code length}. */
  public Time mod(Time length) {
    return minus(length.times(over(length).floor()));
  }

  /** The nearest whole number, halves upwards. The one rounding rule of all outputs. */
  public long rounded() {
    return Math.floorDiv(
        Math.addExact(Math.multiplyExact(num, 2), den), Math.multiplyExact(den, 2));
  }

  /** As a decimal number with at most two places after the point, the last one rounded. */
  public String decimal() {
    if (isWhole()) {
      return Long.toString(num);
    }
    return BigDecimal.valueOf(num)
        .divide(BigDecimal.valueOf(den), 2, RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }

  /** -1, 0 or 1. */
  public int sign() {
    return Long.signum(num);
  }

  /** True for a whole number. */
  public boolean isWhole() {
    return den == 1;
  }

  /** True if this is before {@code other}. */
  public boolean before(Time other) {
    return compareTo(other) < 0;
  }

  /** The earlier of two. */
  public static Time min(Time a, Time b) {
    return a.compareTo(b) <= 0 ? a : b;
  }

  /** The later of two. */
  public static Time max(Time a, Time b) {
    return a.compareTo(b) >= 0 ? a : b;
  }

  @Override
  public int compareTo(Time other) {
    if (den == other.den) {
      return Long.compare(num, other.num);
    }
    if (isSmall(num) && isSmall(den) && isSmall(other.num) && isSmall(other.den)) {
      return Long.compare(num * other.den, other.num * den);
    }
    // Both products to 128 bits: an order never overflows.
    int high = Long.compare(Math.multiplyHigh(num, other.den), Math.multiplyHigh(other.num, den));
    return high != 0 ? high : Long.compareUnsigned(num * other.den, other.num * den);
  }

  /** {@code 3/16}, or {@code 2} for a whole number. */
  @Override
  public String toString() {
    return den == 1 ? Long.toString(num) : num + "/" + den;
  }
}
