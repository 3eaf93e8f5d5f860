package tabor.body;

/**
 * What a limb did last, packed into 16 bits: how many instants ago, on which surface, and whether
 * it only helped with small strokes or a roll. A limb whose last stroke is longer ago than is
 * remembered has rested: only its place is known. Two of them make the state that a dealing goes
 * through.
 */
final class Last {
  private Last() {}

  /** The limb never strikes. */
  static final int NONE = 0x7FFF;

  /** The most instants back that can be packed. */
  static final int FURTHEST = 61;

  private static final int RESTED = 62;
  private static final int HELPED = 1 << 14;

  /** A stroke at the instant that was just passed. */
  static int now(int surface, boolean helped) {
    return surface | (helped ? HELPED : 0);
  }

  /** A limb that rests where it struck once. */
  static int rested(int surface) {
    return surface | (RESTED << 8);
  }

  /** The same, {@code by} instants further back. */
  static int back(int last, int by) {
    return last + (by << 8);
  }

  /** How many instants ago; 0 for the one just passed. */
  static int age(int last) {
    return (last >> 8) & 0x3F;
  }

  /** The surface's number. */
  static int surface(int last) {
    return last & 0xFF;
  }

  /** True if it is still known when the last stroke was. */
  static boolean isRecent(int last) {
    return last != NONE && age(last) != RESTED;
  }

  /** True if the last thing was to help the other limb. */
  static boolean helped(int last) {
    return (last & HELPED) != 0;
  }

  /** A state of both limbs. */
  static int pair(int right, int left) {
    return (right << 16) | left;
  }

  /** The right limb of a state. */
  static int right(int pair) {
    return pair >>> 16;
  }

  /** The left limb of a state. */
  static int left(int pair) {
    return pair & 0xFFFF;
  }
}
