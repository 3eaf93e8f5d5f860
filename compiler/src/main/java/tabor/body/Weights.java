package tabor.body;

/**
 * What each thing costs in a dealing, in points. Only their proportions matter: what costs more is
 * avoided first. {@code docs/body.md} explains the same list for drummers. All of them are common
 * practice put into figures by us; there is no source, and every figure is a guess that the tests
 * of whole grooves hold in place.
 */
final class Weights {
  private Weights() {}

  // Nothing impossible.

  /** A stroke by a limb that grace notes or a roll keep busy. */
  static final long BUSY = 100_000;

  // What a stroke is for says whose it is.

  /** A kick that is not the right foot's, a hi-hat pedal that is not the left's. */
  static final long WRONG_PEDAL = 60;

  /** A place in a row of single strokes by the hand whose turn it is not. */
  static final long OUT_OF_TURN = 12;

  /** A stroke against the time by the hand that keeps the time. */
  static final long LEAVES_THE_TIME = 8;

  /** A crash by the left. */
  static final long LEFT_CRASH = 7;

  /** A cross-stick by the right, where nobody keeps the time with the left. */
  static final long RIGHT_LIES = 8;

  /** Time kept by the left. */
  static final long LEFT_KEEPS_TIME = 6;

  /** A single stroke with nothing around it by the left. */
  static final long LEFT_ALONE = 2;

  // Staying where one is.

  /** The time passes from one hand to the other. */
  static final long TIME_CHANGES_HANDS = 15;

  /** A surface is struck by the hand that the writer never gives it to elsewhere. */
  static final long AGAINST_THE_WRITER = 6;

  /** A single stroke by a hand that is elsewhere, on what the other hand struck last. */
  static final long NOT_AT_HOME = 4;

  // Arms.

  /** Both hands at once: the left is not on the snare although the other plays it. */
  static final long SNARE_NOT_LEFT = 8;

  /** Both hands at once, arms crossed. */
  static final long CROSSED = 20;

  /** Both hands at once, the right on what stands further left, by less than a crossing. */
  static final long RIGHT_ON_THE_LEFT = 3;

  /** Arms crossed from one stroke to the next within a quarter of a second. */
  static final long CROSSED_SOON = 3;

  /** A hand's way: one point for each so many centimetres per second. */
  static final double CENTIMETRES_PER_SECOND_A_POINT = 100;

  // Speed of one limb.

  /** The second of two strokes of one limb, five a second or faster: a double. */
  static final long DOUBLE = 3;

  /** What a third in a row costs on top. */
  static final long THIRD = 6;

  /**
   * Two strokes of one limb twice as fast as nine a second, on top; the faster, the more, and
   * nothing at nine.
   */
  static final long BURST = 20;

  /** Seconds between strokes from which on they are no double. */
  static final double SLOW = 1.0 / 5;

  /** Seconds between strokes below which a double is a burst. */
  static final double BURSTING = 1.0 / 9;

  /** Seconds within which arms that cross are felt. */
  static final double SOON = 0.25;

  /** Seconds after a stroke from which on a limb has rested: only its place counts then. */
  static final double RESTED = 0.5;
}
