package tabor.perform;

import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/**
 * A run of a performance in one tempo and feel: a section once through or a stretch of it, a
 * count-in, a rest, or the time in which the count stops.
 *
 * @param kind what happens in it
 * @param groove the section; for a count-in or rest the one whose meter it takes, null for none
 * @param meters time signature and beats of each bar; of a count-in the first only is counted
 * @param tempo speed
 * @param feel where off-beats sound
 * @param bars whole bars of the section or rest, the pickup not counted, also where only a stretch
 *     of them is played; of a count-in the bars counted, of which the pickup after it takes the end
 * @param from where it begins, in whole notes from the line of bar 1; below zero in a pickup or
 *     count-in
 * @param to where it ends, measured from the same line
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
    Time from,
    Time to,
    Time start,
    long picos) {
  /** What happens in a segment. */
  public enum Kind {
    COUNT_IN,
    SECTION,
    REST,
    /** Bars of a section that are left to the student. */
    YOURS,
    /** Silence by the clock, without bars. */
    PAUSE,
    /** The last stroke rings and the count stops. */
    HOLD;

    /** True if bars go on being counted in it. */
    public boolean hasBars() {
      return this == SECTION || this == REST || this == YOURS;
    }
  }

  /** How long it is in whole notes. */
  public Time length() {
    return to.minus(from);
  }

  /**
   * Of a section the pickup that is played in front, of a count-in what it leaves to the pickup
   * after it, in whole notes.
   */
  public Time pickup() {
    return switch (kind) {
      case COUNT_IN -> to.negate();
      case SECTION -> Time.max(Time.ZERO, from.negate());
      default -> Time.ZERO;
    };
  }

  /** Time signature and beats of a bar, numbered as in {@link #barline}. */
  public Meter meter(int bar) {
    return meters.of(bar);
  }

  /** The number of its first bar: 0 for a pickup, below 1 in a count-in. */
  public int firstBar() {
    return kind == Kind.COUNT_IN ? 1 - bars : from.sign() < 0 ? 0 : meters.place(from).bar();
  }

  /** The number of its last bar. */
  public int lastBar() {
    if (kind == Kind.COUNT_IN || to.sign() <= 0) {
      return 0;
    }
    Meters.Place end = meters.place(to);
    return end.at().sign() == 0 ? end.bar() - 1 : end.bar();
  }

  /** True if it ends within a bar, which what follows then goes on with. */
  public boolean endsInBar() {
    return kind.hasBars() && to.sign() > 0 && meters.place(to).at().sign() != 0;
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
    return start.minus(from).plus(meters.start(bar));
  }
}
