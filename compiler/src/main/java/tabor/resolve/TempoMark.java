package tabor.resolve;

import org.jspecify.annotations.Nullable;
import tabor.rhythm.BeatUnit;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.syntax.Ref;
import tabor.syntax.SettingStatement;

/**
 * A tempo as said, before it is known in which meter.
 *
 * @param beat what is counted, in whole notes; null for the meter's own beat
 * @param perMinute how many of them in a minute
 */
public record TempoMark(@Nullable Time beat, Time perMinute) {
  /** 90 of the meter's beats. */
  static final TempoMark USUAL = new TempoMark(null, Time.of(90));

  static TempoMark of(SettingStatement.Tempo written) {
    Ref<BeatUnit> unit = written.unit();
    return new TempoMark(unit == null ? null : unit.value().length(), written.perMinute().value());
  }

  /** A tempo whatever the meter. */
  public static TempoMark of(Tempo tempo) {
    return new TempoMark(tempo.beat(), tempo.perMinute());
  }

  /** The tempo in a meter. */
  public Tempo in(Meter meter) {
    return new Tempo(beat == null ? meter.tempoBeat() : beat, perMinute);
  }
}
