package tabor.perform;

import java.util.ArrayList;
import java.util.List;
import tabor.groove.Chart;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/** The tempi of a gradual change beat by beat, for an output that writes its bars out. */
public final class GradualTempo {
  private Sweep sweep;

  private GradualTempo(Sweep sweep) {
    this.sweep = sweep;
  }

  /**
   * A tempo from a beat on.
   *
   * @param at in whole notes from the start of the bar
   */
  public record Step(Time at, Tempo tempo) {}

  /**
   * The change that a line of a chart begins.
   *
   * @param later what stands below it
   */
  public static GradualTempo of(Chart.Ramp ramp, List<Chart.Item> later) {
    return new GradualTempo(Sweep.of(ramp, later));
  }

  /** True if a line at this tempo takes part: one with a tempo of its own ends the change. */
  public boolean takes(Tempo tempo) {
    return tempo.perMinute().equals(sweep.to());
  }

  /** True once all its beats are past. */
  public boolean isOver() {
    return sweep.isOver();
  }

  /** True once its first beat is past. */
  public boolean isBegun() {
    return sweep.done() > 0;
  }

  /** The tempo of the beat that comes next: a pickup and a count-in have it too. */
  public Tempo next(Tempo counted) {
    return counted.at(sweep.next());
  }

  /**
   * Goes on over a bar: the tempi of its beats, up to the first beat after the change.
   *
   * @param counted a tempo that counts the same value
   */
  public List<Step> bar(Meter meter, Tempo counted) {
    List<Step> steps = new ArrayList<>();
    for (int beat = 0; beat < meter.beatCount() && sweep.done() <= sweep.beats(); beat++) {
      steps.add(new Step(meter.beatStart(beat), next(counted)));
      sweep = new Sweep(sweep.from(), sweep.to(), sweep.beats(), sweep.done() + 1);
    }
    return steps;
  }
}
