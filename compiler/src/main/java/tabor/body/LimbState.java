package tabor.body;

/**
 * What a limb did last, packed into 20 bits: how many instants ago, on which surface, whether it
 * kept the time, only helped (with grace notes or a roll), and how many quick strokes it has made
 * in a row. A limb whose last stroke is longer ago than is remembered has rested: only its place is
 * known. Two of them make the state of the search.
 */
final class LimbState {
  private LimbState() {}

  /** How many instants a limb's last stroke is remembered for; only rolls are longer. */
  static final int MEMORY = 4;

  /** The most instants back that can be packed. */
  static final int FURTHEST = 61;

  /** The limb never strikes. */
  static final int NEVER = (1 << 20) - 1;

  private static final int RESTED = 62;
  private static final int AGE = 8;
  private static final int HELPED = 1 << 14;
  private static final int TIME = 1 << 15;
  private static final int RUN = 16;

  /** A stroke at the instant that was just passed. */
  static int struck(int surface, boolean time, int run) {
    return surface | (time ? TIME : 0) | (run << RUN);
  }

  /** Grace notes or a roll for the other limb, at the instant that was just passed. */
  static int helped(int surface) {
    return surface | HELPED;
  }

  /** A limb that rests where it struck once. */
  static int rested(int surface) {
    return surface | (RESTED << AGE);
  }

  /** The same, one instant further back. */
  static int older(int state) {
    return state + (1 << AGE);
  }

  /** How many instants ago; 0 for the one just passed. */
  static int age(int state) {
    return (state >> AGE) & 0x3F;
  }

  /** The surface's number. */
  static int surface(int state) {
    return state & 0xFF;
  }

  /** True if it is still known when the last stroke was. */
  static boolean isRecent(int state) {
    return state != NEVER && age(state) != RESTED;
  }

  /** True if the last thing was to help the other limb. */
  static boolean isHelp(int state) {
    return (state & HELPED) != 0;
  }

  /** True if the last stroke kept the time, and is still known. */
  static boolean keptTime(int state) {
    return isRecent(state) && (state & TIME) != 0;
  }

  /** How many quick strokes the limb made before the last one without a break, 0 or 1. */
  static int run(int state) {
    return (state >> RUN) & 1;
  }

  /** The same with a quick stroke before it. */
  static int inDouble(int state) {
    return state | (1 << RUN);
  }

  /** The same without one. */
  static int fresh(int state) {
    return state & ~(1 << RUN);
  }

  /** The state of both limbs. */
  static long pair(int right, int left) {
    return ((long) right << 20) | left;
  }

  /** The right limb of a state. */
  static int right(long pair) {
    return (int) (pair >>> 20);
  }

  /** The left limb of a state. */
  static int left(long pair) {
    return (int) (pair & 0xFFFFF);
  }
}
