package tabor.perform;

import org.jspecify.annotations.Nullable;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.rhythm.Time;

/**
 * One sound of a performance.
 *
 * @param kind what made it
 * @param limb who strikes; null for clicks and the count-in
 * @param surface what is struck; null for clicks and the count-in
 * @param key General MIDI percussion key
 * @param velocity 1 to 127
 * @param start whole notes from the start of the performance, swing included, 0 or more
 * @param length how long it sounds, in whole notes, above 0
 * @param micros its start in microseconds from the start of the performance, rounded once
 * @param segment index of its segment in {@link Performance#segments()}: says which section, at
 *     which tempo, which time through
 * @param bar bar of its section, 1-based; 0 is the pickup. A count-in's last bar is bar 0, the one
 *     before it -1
 * @param at where it is written: distance from the barline in whole notes, swing left out; for
 *     grace notes and rolls the place of their main stroke
 * @param stroke the written stroke it belongs to; null for clicks and the count-in
 */
public record Sound(
    Kind kind,
    @Nullable Limb limb,
    @Nullable Surface surface,
    int key,
    int velocity,
    Time start,
    Time length,
    long micros,
    int segment,
    int bar,
    Time at,
    @Nullable Stroke stroke) {

  /** What made a sound. */
  public enum Kind {
    /** A written stroke: one of the stroke list. */
    STROKE,
    /** A grace note of a flam, drag or ruff. Timed in milliseconds. */
    GRACE,
    /** A further stroke of a diddle or open roll. Measured. */
    ROLL,
    /** A further bounce of a buzzed stroke. Timed in milliseconds. */
    BOUNCE,
    /** The click under the music. */
    CLICK,
    /** A beat of the count-in. */
    COUNT_IN;

    /** True if the start is an exact place of the bar's divisions, which outputs must not round. */
    public boolean isMeasured() {
      return this != GRACE && this != BOUNCE;
    }
  }

  /** Throws {@link IllegalArgumentException} for a number out of range. */
  public Sound {
    if (velocity < 1 || velocity > 127 || length.sign() <= 0) {
      throw new IllegalArgumentException("sound " + velocity + " " + length);
    }
  }

  /** Where it stops. */
  public Time end() {
    return BoundedTime.plus(start, length);
  }

  /** True if the hand stops the cymbal at the end of this sound. */
  public boolean isChoked() {
    return stroke != null && stroke.ornaments().has(tabor.groove.Ornament.CHOKE);
  }

  Sound lasting(Time other, long since) {
    return new Sound(
        kind, limb, surface, key, velocity, start, other, since, segment, bar, at, stroke);
  }
}
