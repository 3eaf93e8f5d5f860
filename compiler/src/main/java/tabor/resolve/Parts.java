package tabor.resolve;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.groove.Part;
import tabor.kit.Kit;
import tabor.kit.Limb;
import tabor.syntax.Line;
import tabor.syntax.TargetRef;

/** Targets as the model keeps them. */
final class Parts {
  private Parts() {}

  /** What targets mean on a kit; one that names nothing there is left out, and said so. */
  static List<Part> of(Line line, List<TargetRef> targets, Kit kit, Problems problems) {
    List<Part> parts = new ArrayList<>(targets.size());
    for (TargetRef target : targets) {
      Part part = of(target, kit);
      if (part == null) {
        problems.incomplete();
        SurfaceMessages.unknownTarget(problems, line, target, kit);
      } else {
        parts.add(part);
      }
    }
    return parts;
  }

  /** What a target means on a kit; null if the kit has no such surface or piece. */
  static @Nullable Part of(TargetRef target, Kit kit) {
    TargetFilter filter = TargetFilter.of(target, kit);
    if (filter == null) {
      return null;
    }
    Set<Limb> limbs = EnumSet.noneOf(Limb.class);
    if (filter.limb() != null) {
      limbs.add(filter.limb());
    }
    TargetRef.Group group = filter.group();
    if (group != null) {
      for (Limb limb : Limb.values()) {
        boolean meant =
            switch (group) {
              case ALL -> true;
              case HANDS -> limb.isHand();
              case FEET -> !limb.isHand();
            };
        if (meant) {
          limbs.add(limb);
        }
      }
    }
    return new Part(target.words(), limbs, filter.surface(), filter.wholePiece());
  }
}
