package tabor.perform;

import org.jspecify.annotations.Nullable;
import tabor.groove.Chart.Click;
import tabor.groove.Groove;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/**
 * A segment that is not yet placed in time. The components are those of {@link Segment}.
 *
 * @param click what the click does under it
 */
record PlannedSegment(
    Segment.Kind kind,
    @Nullable Groove groove,
    Tempo tempo,
    Feel feel,
    int bars,
    Time pickup,
    Click click) {

  /**
   * So many bars of count-in, in the first meter of what it counts in. It leaves {@code pickup} to
   * what comes after it.
   */
  static PlannedSegment countIn(int bars, @Nullable Groove like, Tempo tempo, Time pickup) {
    Time left = pickup.before(meters(like).first().bar()) ? pickup : Time.ZERO;
    return new PlannedSegment(
        Segment.Kind.COUNT_IN, like, tempo, Feel.STRAIGHT, bars, left, Click.OFF);
  }

  /** A section once, with or without its pickup. */
  static PlannedSegment section(
      Groove groove, Tempo tempo, Feel feel, boolean pickup, Click click) {
    return new PlannedSegment(
        Segment.Kind.SECTION,
        groove,
        tempo,
        feel,
        groove.bars(),
        pickup ? groove.pickup() : Time.ZERO,
        click);
  }

  Segment at(Time start, long picos) {
    return new Segment(kind, groove, meters(groove), tempo, feel, bars, pickup, start, picos);
  }

  private static Meters meters(@Nullable Groove groove) {
    return groove == null ? Meters.of(Meter.COMMON) : groove.meters();
  }

  Time length() {
    return at(Time.ZERO, 0).length();
  }
}
