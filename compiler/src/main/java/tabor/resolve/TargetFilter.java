package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.groove.Stroke;
import tabor.kit.Kit;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.lists.Lists;
import tabor.syntax.LimbRef;
import tabor.syntax.SurfaceRef;
import tabor.syntax.TargetRef;

/**
 * Whose strokes are meant.
 *
 * @param limb the limb, where one is meant
 * @param group the limbs, where several are meant
 * @param surface what is struck, where that is meant; for a piece without a surface of that name
 *     one of its zones
 * @param wholePiece true if all zones are meant that are struck by the same kind of limb
 */
public record TargetFilter(
    @Nullable Limb limb,
    TargetRef.@Nullable Group group,
    @Nullable Surface surface,
    boolean wholePiece)
    implements Predicate<Stroke> {

  /** All that a limb strikes. */
  public static TargetFilter of(Limb limb) {
    return new TargetFilter(limb, null, null, false);
  }

  /** What a target means on a kit; null if the kit has no such surface or piece. */
  public static @Nullable TargetFilter of(TargetRef target, Kit kit) {
    return target.match(
        new TargetRef.Cases<@Nullable TargetFilter>() {
          @Override
          public TargetFilter limb(LimbRef limb) {
            return of(limb.limb());
          }

          @Override
          public TargetFilter group(TargetRef.Group group) {
            return new TargetFilter(null, group, null, false);
          }

          @Override
          public @Nullable TargetFilter surface(SurfaceRef surface) {
            return of(surface, kit);
          }
        });
  }

  private static @Nullable TargetFilter of(SurfaceRef named, Kit kit) {
    Surface surface = kit.surface(named.name());
    if (surface != null) {
      return new TargetFilter(null, null, surface, surface.name().equals(surface.piece()));
    }
    for (Surface zone : kit.surfaces().values()) {
      if (zone.piece().equals(named.name())) {
        return new TargetFilter(null, null, zone, true);
      }
    }
    return null;
  }

  /** What any of several targets means; they are not changed afterwards. */
  static Predicate<Stroke> any(List<TargetFilter> filters) {
    return filters.size() == 1
        ? filters.get(0)
        : stroke -> Lists.any(filters, filter -> filter.test(stroke));
  }

  /** What any of several targets means on a kit; one that names nothing there means no stroke. */
  public static Predicate<Stroke> any(List<TargetRef> targets, Kit kit) {
    List<TargetFilter> filters = new ArrayList<>(targets.size());
    for (TargetRef target : targets) {
      TargetFilter filter = of(target, kit);
      if (filter != null) {
        filters.add(filter);
      }
    }
    return any(filters);
  }

  @Override
  public boolean test(Stroke stroke) {
    if (limb != null) {
      return stroke.limb() == limb && stroke.hasLimb();
    }
    if (group != null) {
      return switch (group) {
        case ALL -> true;
        case HANDS -> stroke.limb().isHand();
        case FEET -> !stroke.limb().isHand();
      };
    }
    return surface != null && isOn(stroke.surface(), surface);
  }

  /** True if strokes of the hands, or else of the feet, may be meant. */
  boolean mayBe(boolean hands) {
    if (limb != null) {
      return limb.isHand() == hands;
    }
    if (group != null) {
      return group == TargetRef.Group.ALL || (group == TargetRef.Group.HANDS) == hands;
    }
    return surface != null && surface.isFoot() != hands;
  }

  private boolean isOn(Surface other, Surface own) {
    return wholePiece
        ? other.piece().equals(own.piece()) && other.isFoot() == own.isFoot()
        : other.name().equals(own.name());
  }
}
