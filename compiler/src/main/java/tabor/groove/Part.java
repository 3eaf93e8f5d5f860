package tabor.groove;

import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.kit.Limb;
import tabor.kit.Surface;

/**
 * A part of the music as the writer names it: limbs, or a surface or piece. It reads strokes as
 * they are written ({@link Groove#written()}): before stand-ins, and before a left-handed player is
 * mirrored.
 *
 * @param words as written: {@code hands}, {@code left foot}, {@code kick}
 * @param limbs the limbs; empty where a surface is named
 * @param surface the surface; null where limbs are named
 * @param wholePiece true if all zones of the surface's piece are meant that the same kind of limb
 *     strikes
 */
public record Part(String words, Set<Limb> limbs, @Nullable Surface surface, boolean wholePiece)
    implements Predicate<Stroke> {
  /** Copies the set; throws unless either limbs or a surface are named. */
  public Part {
    limbs = Set.copyOf(limbs);
    if (limbs.isEmpty() == (surface == null)) {
      throw new IllegalArgumentException("part " + words);
    }
  }

  @Override
  public boolean test(Stroke stroke) {
    if (surface == null) {
      return stroke.hasLimb() && limbs.contains(stroke.limb());
    }
    Surface struck = stroke.surface();
    return wholePiece
        ? struck.piece().equals(surface.piece()) && struck.isFoot() == surface.isFoot()
        : struck.name().equals(surface.name());
  }
}
