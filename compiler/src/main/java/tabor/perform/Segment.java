package tabor.perform;

import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/**
 * A run of a performance in one tempo and feel: a section once through, a count-in or a rest.
 *
 * @param kind what happens in it
 * @param groove the section; for a count-in or rest the one whose meter it takes, null for none
 * @param meters time signature and beats of each bar; of a count-in the first only is counted
 * @param tempo speed
 * @param feel where off-beats sound
 * @param bars whole bars, the pickup not counted; of a count-in the bars counted, of which the
 *     pickup after it takes the end
 * @param pickup of a section the pickup that is played in front, of a count-in what it leaves to
 *     the pickup after it, in whole notes
 * @param start whole notes from the start of the performance
 * @param picos the same in picoseconds
 */
public record Segment(
    Kind kind,
    @Nullable Groove groove,
    Meters meters,
    Tempo tempo,
    Feel feel,
    int bars,
    Time pickup,
    Time start,
    long picos) {
  /** What happens in a segment. */
  public enum Kind {
    COUNT_IN,
    SECTION,
    REST
  }

  /** How long it is in whole notes. */
  public Time length() {
    return kind == Kind.COUNT_IN
        ? meters.between(firstBar(), 1).minus(pickup)
        : meters.length(bars).plus(pickup);
  }

  /** Time signature and beats of a bar, numbered as in {@link #barline}. */
  public Meter meter(int bar) {
    return meters.of(bar);
  }

  /** The number of its first bar: 0 for a pickup, below 1 in a count-in. */
  public int firstBar() {
    return kind == Kind.COUNT_IN ? 1 - bars : pickup.sign() > 0 ? 0 : 1;
  }

  /** The number of its last bar. */
  public int lastBar() {
    return kind == Kind.COUNT_IN ? 0 : bars;
  }

  /** Where it ends, in whole notes from the start of the performance. */
  public Time end() {
    return start.plus(length());
  }

  /**
   * Where a barline stands, in whole notes from the start of the performance; bar 1 is the first
   * whole bar of a section or rest, the last bar of a count-in is bar 0.
   */
  public Time barline(int bar) {
    return kind == Kind.COUNT_IN
        ? start.plus(meters.between(firstBar(), bar))
        : start.plus(pickup).plus(meters.start(bar));
  }
}
