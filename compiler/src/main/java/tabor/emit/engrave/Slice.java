package tabor.emit.engrave;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.notation.Voice;
import tabor.rhythm.Time;

/**
 * One column of a bar: everything that begins at one place.
 *
 * @param at distance from the barline in whole notes
 * @param length to the next column, or to the bar's end
 * @param hands the upper voice's chord; null for none
 * @param feet the lower voice's chord; null for none
 * @param rests the rests that are drawn here
 * @param counts what stands above it, a text for each row, the nearest first: empty for nothing
 * @param sticking what stands below it, hands first: each empty for nothing
 * @param countWidths widths of the counts
 * @param stickingWidths widths of the stickings
 * @param left how far it reaches to the left of its place, as a coordinate
 * @param right how far it reaches to the right
 */
record Slice(
    Time at,
    Time length,
    @Nullable ChordShape hands,
    @Nullable ChordShape feet,
    List<RestShape> rests,
    List<String> counts,
    List<String> sticking,
    List<Double> countWidths,
    List<Double> stickingWidths,
    double left,
    double right) {
  Slice {
    rests = List.copyOf(rests);
    counts = List.copyOf(counts);
    countWidths = List.copyOf(countWidths);
    stickingWidths = List.copyOf(stickingWidths);
    sticking = List.copyOf(sticking);
  }

  @Nullable ChordShape chord(Voice voice) {
    return switch (voice) {
      case HANDS -> hands;
      case FEET -> feet;
    };
  }
}
