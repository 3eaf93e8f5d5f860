package tabor.resolve;

import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.kit.Kit;
import tabor.rhythm.Meters;
import tabor.rhythm.Time;
import tabor.source.Spot;
import tabor.syntax.Line;

/**
 * What is settled of a section before any of its lines acts.
 *
 * @param name what it is called
 * @param title as written; null if it has none
 * @param heading its heading
 * @param scope what it may see of its file
 * @param base the section that it starts from; null for a groove
 * @param setting meters, kit, tempo and the like
 * @param pickupBeats how many beats bar 0 has; 0 where there is none
 * @param meterIn what stands between signature and numbers of a meter with {@code in}; null where
 *     there is no such line of this section or its header
 * @param lenient true for a variation of a sheet: a line acts as far as it finds something, since
 *     it need do so in one variation only
 */
record SectionFrame(
    String name,
    @Nullable String title,
    Line heading,
    Scope scope,
    @Nullable Groove base,
    Groove.Setting setting,
    int pickupBeats,
    @Nullable Spot meterIn,
    boolean lenient) {

  Kit kit() {
    return setting.kit();
  }

  Meters meters() {
    return setting.meters();
  }

  /** Length of bar 0 in whole notes. */
  Time pickup() {
    Time length = Time.ZERO;
    int beats = meters().first().beatCount();
    for (int beat = beats - pickupBeats; beat < beats; beat++) {
      length = length.plus(meters().first().beat(beat));
    }
    return length;
  }

  /** True if a spot is in this section's own text. */
  boolean owns(Spot spot) {
    return spot.passage() == heading.passage();
  }
}
