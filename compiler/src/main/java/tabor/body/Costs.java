package tabor.body;

import tabor.kit.Surface;
import tabor.rhythm.Time;

/**
 * What it costs a pair of limbs to strike this way rather than that, in points. {@code
 * docs/body.md} says the same in a drummer's words; the figures are common practice, no source.
 *
 * <p>Times are those of the written notes at 100 quarters a minute, whatever the tempo: practising
 * slower does not change who plays what.
 */
final class Costs {
  private Costs() {}

  /** An open stroke that finds no limb. */
  static final long UNDEALT = 10_000_000;

  /** A stroke by a limb that small strokes or a roll keep busy. */
  static final long CLASH = 100_000;

  /** The left hand keeps time on the hi-hat, the ride or a bell. */
  static final long LEFT_KEEPS_TIME = 6;

  /** The other hand takes over in a run on one timekeeping piece. */
  static final long CHANGE_OF_HAND = 15;

  /** A timekeeping hand goes on faster than thirty-seconds would let it. */
  static final long BURST = 90;

  /** In a part of one pair of limbs: the limb that struck last strikes again. */
  static final long NOT_ALTERNATING = 10;

  /** Such a repeat where the section starts over. */
  static final long NOT_ALTERNATING_AT_SEAM = 9;

  /** The left limb on a beat; on the half of one; on the first of a bar on top. */
  static final long LEFT_ON_BEAT = 4;

  static final long LEFT_ON_HALF = 2;
  static final long LEFT_ON_BAR = 2;

  /** The left limb has the first open stroke of the section. */
  static final long LEFT_BEGINS = 1;

  /** The arms cross at one instant, or from one stroke to the next within an eighth. */
  static final long CROSSED = 20;

  static final long CROSSED_SOON = 10;

  /** The writer gives this surface to the other limb elsewhere in the section. */
  static final long AGAINST_HABIT = 6;

  /** The left foot on the kick, the right foot on the hi-hat's pedal. */
  static final long WRONG_PEDAL = 60;

  /** Hands that are this close side by side are not crossed, in centimetres. */
  static final int SIDE_BY_SIDE = 10;

  /** How many strokes of the pair a limb's last stroke is remembered for. */
  static final int MEMORY = 4;

  /** Microseconds in a whole note at 100 quarters a minute. */
  static final long WHOLE = 2_400_000;

  private static final long EIGHTH = WHOLE / 8;

  /** Microseconds of a length in whole notes, rounded. */
  static long micros(Time wholes) {
    // The same as rounding the product, without bringing it into lowest terms first.
    long twice = Math.multiplyExact(Math.multiplyExact(wholes.num(), WHOLE), 2);
    return Math.floorDiv(Math.addExact(twice, wholes.den()), Math.multiplyExact(wholes.den(), 2));
  }

  /**
   * The way of a hand: a tenth of its speed in centimetres a second; after a rest as if it had a
   * whole note for it.
   */
  static long way(int centimetres, long micros) {
    long time = Math.max(1, Math.min(micros, WHOLE));
    return centimetres * 100_000L / time;
  }

  /** A stroke so soon after one of the same limb: nothing from 400 ms on, then ever steeper. */
  static long repeat(long micros, boolean seam) {
    long lacking = (400_000 - Math.min(micros, 400_000)) / 25_000;
    long cost = lacking * lacking * lacking / 32;
    return seam && cost > 0 ? cost - 1 : cost;
  }

  /** A stroke so soon after one of the same hand on a piece that keeps time. */
  static long keepingTime(long micros) {
    return micros < 110_000 ? BURST : 0;
  }

  /** True if the time is short enough for crossed arms to be felt. */
  static boolean isSoon(long micros) {
    return micros <= EIGHTH;
  }

  /** True for the pieces that time is kept on. */
  static boolean keepsTime(Surface surface) {
    return surface.keepsTime();
  }

  /**
   * True if the right hand on the one and the left on the other cross; a right hand over the left
   * on the snare is how people sit.
   */
  static boolean crosses(Places places, Surface right, Surface left) {
    return left.sort() != Surface.Sort.SNARE
        && places.of(right).x() + SIDE_BY_SIDE < places.of(left).x();
  }
}
