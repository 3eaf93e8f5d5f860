package tabor.notation;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/** The stretches of a bar that one beam may join. */
final class BeamGroups {
  private static final Time QUARTER = Written.Type.QUARTER.length();
  private static final Time HALF = Written.Type.HALF.length();

  private BeamGroups() {}

  /**
   * Where windows start, the bar's end included: every beat is one, but whole-note beats are
   * halved, dotted halves fall into quarters, and short beats are taken together in threes where
   * the bar divides so, else up to a quarter with what is left over in the last.
   */
  static NavigableSet<Time> of(Meter meter) {
    NavigableSet<Time> starts = new TreeSet<>();
    int beats = meter.beatCount();
    if (meter.isEven() && meter.beat(0).before(QUARTER) && !Meter.isDotted(meter.beat(0))) {
      int size = beats % 3 == 0 ? 3 : Math.max(1, (int) QUARTER.over(meter.beat(0)).floor());
      for (int beat = 0; beat == 0 || beat + size <= beats; beat += size) {
        starts.add(meter.beatStart(beat));
      }
    } else {
      for (int beat = 0; beat < beats; beat++) {
        starts.addAll(within(meter.beatStart(beat), meter.beat(beat)));
      }
    }
    starts.add(meter.bar());
    return starts;
  }

  private static List<Time> within(Time start, Time beat) {
    Time step = beat;
    if (beat.compareTo(HALF) > 0) {
      step = Meter.isDotted(beat) ? QUARTER : HALF;
    }
    List<Time> starts = new ArrayList<>();
    for (Time at = Time.ZERO; at.before(beat); at = at.plus(step)) {
      starts.add(start.plus(at));
    }
    return starts;
  }
}
