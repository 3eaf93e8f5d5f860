package tabor.emit.musicxml;

import java.math.BigInteger;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.emit.musicxml.ScoreFile.Element;
import tabor.emit.musicxml.ScoreFile.SoundTempo;
import tabor.perform.GradualTempo;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/** The tempo that a player of the file is at, where it changes gradually beat by beat. */
final class HeardTempo {
  private @Nullable GradualTempo gradual;
  private String quarters = "";

  /** From here on the tempo changes gradually; null for no longer. */
  void change(@Nullable GradualTempo by) {
    gradual = by;
  }

  /** The change that is going on; null for none. */
  @Nullable GradualTempo changing() {
    return gradual != null && !gradual.isOver() ? gradual : null;
  }

  /** True while tempi may be written that no mark shows. */
  boolean changes() {
    return gradual != null;
  }

  /** True after the first beat of a change and before its last. */
  boolean isWithinChange() {
    GradualTempo now = changing();
    return now != null && now.isBegun();
  }

  /** A tempo mark was written, which ends a change that is over. */
  void marked(Tempo tempo) {
    quarters = quarters(tempo);
    gradual = changing();
  }

  /**
   * Where in the next bar the tempo changes.
   *
   * @param written the tempo that was written last, whose value is counted
   */
  List<GradualTempo.Step> steps(Meter meter, boolean pickup, @Nullable Tempo written) {
    GradualTempo now = gradual;
    if (now == null || written == null) {
      return List.of();
    }
    return pickup
        ? List.of(new GradualTempo.Step(Time.ZERO, now.next(written)))
        : now.bar(meter, written);
  }

  /**
   * Writes a step, unless the tempo stays as it is.
   *
   * @param start where in the bar the next note starts
   */
  void add(GradualTempo.Step step, Time start, BigInteger divisions, List<Element> into) {
    String next = quarters(step.tempo());
    if (!next.equals(quarters)) {
      quarters = next;
      into.add(new SoundTempo(next, Divisions.of(step.at().minus(start), divisions)));
    }
  }

  private static String quarters(Tempo tempo) {
    return tempo.quartersPerMinute().decimal();
  }
}
