package tabor.body;

import tabor.kit.Limb;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/**
 * One thing that a section asks of one limb: so much to be done between two written places. It is
 * met as long as the tempo leaves the limb the seconds that it needs.
 *
 * @param kind what is asked
 * @param limb who must do it
 * @param from the movement it starts from
 * @param to the movement it ends with; later in the loop, {@code from} itself for what happens
 *     inside one movement
 * @param gap from the one to the other, in whole notes, more than 0
 * @param needs how long the limb needs for it, in seconds
 */
record Demand(Kind kind, Limb limb, Movement from, Movement to, Time gap, Time needs) {
  /** What is asked of a limb. */
  enum Kind {
    /** Three movements in a row: the middle one has no time to be a bounce of both others. */
    SINGLES,
    /** Two strokes right after each other, as within a double. */
    DOUBLES,
    /** A way between two surfaces. */
    REACH
  }

  /** True for what happens inside one movement, between the two strokes of a diddle. */
  boolean isInside() {
    return from.inner().sign() > 0 && from.equals(to);
  }

  /** True if a tempo, given by the seconds that a whole note takes, leaves too little time. */
  boolean fails(Time secondsPerWhole) {
    return gap.times(secondsPerWhole).before(needs);
  }

  /** How long the written places are apart at a tempo, in seconds. */
  Time seconds(Tempo tempo) {
    return gap.times(tempo.secondsPerWhole());
  }

  /** The highest tempo that leaves enough time, in notes of {@code beat} per minute. */
  Time fastest(Time beat) {
    return gap.times(60).over(needs.times(beat));
  }
}
