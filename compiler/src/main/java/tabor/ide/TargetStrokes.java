package tabor.ide;

import tabor.groove.Stroke;
import tabor.kit.Surface;
import tabor.syntax.LimbRef;
import tabor.syntax.SurfaceRef;
import tabor.syntax.TargetRef;

/** Which strokes a target means. */
final class TargetStrokes {
  private TargetStrokes() {}

  /** True if the target means the stroke. */
  static boolean isMeant(TargetRef target, Stroke stroke) {
    return target.match(
        new TargetRef.Cases<>() {
          @Override
          public Boolean limb(LimbRef limb) {
            return stroke.limb() == limb.limb();
          }

          @Override
          public Boolean group(TargetRef.Group group) {
            return switch (group) {
              case HANDS -> stroke.limb().isHand();
              case FEET -> !stroke.limb().isHand();
              case ALL -> true;
            };
          }

          @Override
          public Boolean surface(SurfaceRef surface) {
            Surface struck = stroke.surface();
            // A piece means its zones, but the hand's apart from the foot's.
            return struck.name().equals(surface.name())
                || (struck.piece().equals(surface.name())
                    && (!struck.isFoot() || struck.sort() == Surface.Sort.KICK));
          }
        });
  }
}
