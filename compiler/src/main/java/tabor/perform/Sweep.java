package tabor.perform;

import java.util.ArrayList;
import java.util.List;
import tabor.groove.Chart;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/**
 * A tempo that changes gradually: beat {@code i} of {@code beats}, counted from 0, is at {@code
 * from + (to - from) · i / beats}, and what comes after them at {@code to}. The beats of a pickup
 * before bar 1 are not among them: a pickup has the tempo of the beat after it.
 *
 * @param from beats per minute at the first beat
 * @param to beats per minute after the last
 * @param beats how many beats the change takes, 1 or more
 * @param done how many of them have begun
 */
record Sweep(Time from, Time to, long beats, long done) {
  /** What a segment becomes, and how the change goes on after it. */
  record Swept(List<PlannedSegment> pieces, Sweep next) {}

  /**
   * The change that a line of a chart begins.
   *
   * @param later what stands below it
   */
  static Sweep of(Chart.Ramp ramp, List<Chart.Item> later) {
    long beats = ChartBars.beats(later, ramp.bars());
    return new Sweep(ramp.from().perMinute(), ramp.to().perMinute(), Math.max(1, beats), 0);
  }

  boolean isOver() {
    return done >= beats;
  }

  /** The tempo of a beat by its number from 0. */
  Time beat(long number) {
    return number >= beats ? to : from.plus(to.minus(from).times(number).over(beats));
  }

  /** The tempo of the beat that comes next. */
  Time next() {
    return beat(done);
  }

  /** True if what is played takes part: a line with a tempo of its own ends the change. */
  boolean takes(PlannedSegment segment) {
    return segment.kind() == Segment.Kind.REST || segment.tempo().perMinute().equals(to);
  }

  /**
   * Cuts a segment at its beats.
   *
   * @param inBar true if the segment goes on with a bar that has begun
   */
  Swept over(PlannedSegment segment, boolean inBar) {
    List<PlannedSegment> pieces = new ArrayList<>();
    Meters meters = segment.meters();
    Time at = segment.from();
    long count = done;
    if (at.sign() < 0 && !inBar) {
      Time end = Time.min(segment.to(), meters.of(1).beat(0));
      pieces.add(segment.piece(at, end).at(tempo(segment, count++)));
      at = end;
    }
    while (at.before(segment.to())) {
      Meters.Place place = meters.place(at);
      Meter meter = meters.of(place.bar());
      int beat = meter.beatAt(place.at());
      Time line = at.minus(place.at()).plus(meter.beatStart(beat));
      boolean onBeat = line.equals(at);
      if (onBeat && count >= beats) {
        pieces.add(segment.piece(at, segment.to()).at(tempo(segment, count)));
        break;
      }
      Time end = Time.min(segment.to(), line.plus(meter.beat(beat)));
      long number = onBeat ? count++ : Math.max(0, count - 1);
      pieces.add(segment.piece(at, end).at(tempo(segment, number)));
      at = end;
    }
    return new Swept(pieces, new Sweep(from, to, beats, count));
  }

  private Tempo tempo(PlannedSegment segment, long number) {
    return segment.tempo().at(beat(number));
  }
}
