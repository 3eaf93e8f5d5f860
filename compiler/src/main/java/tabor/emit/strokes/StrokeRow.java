package tabor.emit.strokes;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import tabor.groove.Groove;
import tabor.groove.Ornaments;
import tabor.groove.Stroke;
import tabor.perform.Performer;
import tabor.perform.Sound;
import tabor.rhythm.CountNames;
import tabor.rhythm.Time;

/**
 * One row of the list.
 *
 * @param section the section's name
 * @param bar 1-based; 0 is the pickup
 * @param at written distance from the barline in whole notes; in a pickup from where its barline
 *     would be
 * @param surface what is struck
 * @param limb who strikes
 * @param level {@code ghost}, {@code plain} or {@code accent}
 * @param ornaments what is done to it
 * @param count as it is counted aloud
 * @param length written length in whole notes, holds included
 * @param micros when it sounds: microseconds from the first bar of the section (its pickup, if it
 *     has one) at the section's own tempo, swing included, rounded once
 */
record StrokeRow(
    String section,
    int bar,
    Time at,
    String surface,
    String limb,
    String level,
    Ornaments ornaments,
    String count,
    Time length,
    long micros) {

  /** The strokes of a section in the order of {@link Stroke#ORDER}. */
  static List<StrokeRow> of(Groove groove) {
    Map<Stroke, Long> micros = new IdentityHashMap<>();
    for (Sound sound : Performer.once(groove, 0).sounds()) {
      if (sound.kind() == Sound.Kind.STROKE && sound.stroke() != null) {
        micros.put(sound.stroke(), sound.micros());
      }
    }
    return groove.strokes().stream()
        .map(
            stroke ->
                new StrokeRow(
                    groove.name(),
                    stroke.bar(),
                    stroke.at(),
                    stroke.surface().name(),
                    stroke.limb().words(),
                    stroke.level().word(),
                    stroke.ornaments(),
                    CountNames.of(stroke.slot(), groove.meter(stroke.bar())).toString(),
                    stroke.length(),
                    micros.getOrDefault(stroke, 0L)))
        .toList();
  }

  /** Milliseconds with three decimals: {@code 1333.333}. */
  String millis() {
    return micros / 1000 + "." + String.format(java.util.Locale.ROOT, "%03d", micros % 1000);
  }
}
