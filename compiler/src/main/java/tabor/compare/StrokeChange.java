package tabor.compare;

import org.jspecify.annotations.Nullable;
import tabor.groove.Stroke;

/**
 * A stroke that is other than it was.
 *
 * @param before as it was, in the bars of the old section; null for a new one
 * @param after as it is, in the bars of the new section; null for one that is left out
 */
public record StrokeChange(@Nullable Stroke before, @Nullable Stroke after) {
  /** Throws {@link IllegalArgumentException} if there is neither. */
  public StrokeChange {
    if (before == null && after == null) {
      throw new IllegalArgumentException("no stroke");
    }
  }

  /** True if two strokes sound alike and are struck alike, however they are written. */
  static boolean alike(Stroke a, Stroke b) {
    return BarContents.Way.of(a).equals(BarContents.Way.of(b));
  }
}
