package tabor.resolve;

import org.jspecify.annotations.Nullable;
import tabor.groove.Stroke;
import tabor.kit.Kit;
import tabor.kit.Limb;
import tabor.kit.Surface;

/**
 * What a part or an edit speaks of.
 *
 * @param kind what kind of word it is
 * @param limb the limb, for {@link Kind#LIMB}
 * @param surface the surface, for {@link Kind#SURFACE}; for a piece one of its zones
 * @param wholePiece true if all zones struck by the same kind of limb are meant
 */
record Subject(Kind kind, @Nullable Limb limb, @Nullable Surface surface, boolean wholePiece) {
  enum Kind {
    HANDS,
    FEET,
    LINE,
    ALL,
    LIMB,
    SURFACE
  }

  /** The limb that a word names; null for other words. */
  static @Nullable Limb limb(String word) {
    return switch (word) {
      case "right", "right hand" -> Limb.RIGHT_HAND;
      case "left", "left hand" -> Limb.LEFT_HAND;
      case "right foot" -> Limb.RIGHT_FOOT;
      case "left foot" -> Limb.LEFT_FOOT;
      default -> null;
    };
  }

  /** The subject that a word names in a kit; null if it names none. */
  static @Nullable Subject of(String word, Kit kit) {
    switch (word) {
      case "hands":
        return new Subject(Kind.HANDS, null, null, false);
      case "feet":
        return new Subject(Kind.FEET, null, null, false);
      case "line":
        return new Subject(Kind.LINE, null, null, false);
      case "all":
        return new Subject(Kind.ALL, null, null, false);
      default:
        break;
    }
    Limb limb = limb(word);
    if (limb != null) {
      return new Subject(Kind.LIMB, limb, null, false);
    }
    Surface surface = kit.surface(word);
    if (surface != null) {
      return new Subject(Kind.SURFACE, null, surface, word.indexOf('.') < 0);
    }
    for (Surface zone : kit.surfaces().values()) {
      if (zone.piece().equals(word)) {
        return new Subject(Kind.SURFACE, null, zone, true);
      }
    }
    return null;
  }

  /** True if the stroke is one of those spoken of. */
  boolean matches(Stroke stroke) {
    return switch (kind) {
      case ALL, LINE -> true;
      case HANDS -> stroke.limb().isHand();
      case FEET -> !stroke.limb().isHand();
      case LIMB -> stroke.limb() == limb && stroke.hasLimb();
      case SURFACE -> onSurface(stroke.surface());
    };
  }

  private boolean onSurface(Surface other) {
    Surface own = surface;
    if (own == null) {
      return false;
    }
    if (!wholePiece) {
      return other.name().equals(own.name());
    }
    return other.piece().equals(own.piece()) && other.isFoot() == own.isFoot();
  }
}
