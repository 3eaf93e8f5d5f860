package tabor.body;

/**
 * Whose stroke this should be, going by what it is for.
 *
 * @param right true if it should be the right limb's
 * @param weight what the other limb costs, in points
 * @param reason what it is for
 */
record LimbWish(boolean right, long weight, Reason reason) {

  /** What an open stroke is for in its section. */
  enum Reason {
    /** Part of what keeps the time. */
    KEEPS_TIME,
    /** Played against something that keeps the time. */
    AGAINST_TIME,
    /** The hand lies on the drum. */
    HAND_LIES,
    /** A crash or the like. */
    CRASH,
    /** A place in a row of single strokes. */
    ROW,
    /** A place in a row that one hand would be too slow for. */
    SHARED_TIME,
    /** Nothing around it. */
    ALONE,
    /** A pedal. */
    PEDAL
  }

  /** What the wish costs a limb. */
  long cost(boolean byRight) {
    return byRight == right ? 0 : weight;
  }
}
