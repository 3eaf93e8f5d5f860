package tabor.emit.musicxml;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Chart;
import tabor.perform.GradualTempo;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/** What a count-in takes from the lines below it. */
final class ChartAhead {
  private ChartAhead() {}

  /** A count-in before or within a gradual change counts at the tempo of the beat after it. */
  static Tempo counted(Tempo tempo, @Nullable GradualTempo now, List<Chart.Item> later) {
    if (now != null && now.takes(tempo)) {
      return now.next(tempo);
    }
    for (Chart.Item next : later) {
      if (next instanceof Chart.Ramp ramp && ramp.to().perMinute().equals(tempo.perMinute())) {
        return tempo.at(ramp.from().perMinute());
      }
      if (!next.turns().isEmpty() || next instanceof Chart.Rest) {
        break;
      }
    }
    return tempo;
  }

  /** The pickup of what is played next. */
  static Time pickup(List<Chart.Item> later) {
    for (Chart.Item next : later) {
      if (!next.turns().isEmpty()) {
        return next.turns().get(0).groove().pickup();
      }
      if (next instanceof Chart.CountIn
          || next instanceof Chart.Rest
          || next instanceof Chart.Pause
          || next instanceof Chart.Hold) {
        return Time.ZERO;
      }
    }
    return Time.ZERO;
  }
}
