package tabor.resolve;

import org.jspecify.annotations.Nullable;
import tabor.groove.Ornament;
import tabor.groove.Ornaments;
import tabor.groove.Stroke;
import tabor.kit.Surface;
import tabor.syntax.Beat;
import tabor.syntax.Verb;

/** What signs and verbs make of a stroke, and which surface takes them. */
final class SignRules {
  private SignRules() {}

  /** The stroke with a sign; null where its surface does not take it. */
  static @Nullable Stroke with(Stroke stroke, Beat.Suffix suffix, SectionFrame frame) {
    Ornament ornament = suffix.ornament();
    return ornament == null ? opened(stroke, frame) : with(stroke, ornament);
  }

  /** The stroke with what a verb adds; null where its surface does not take it. */
  static @Nullable Stroke with(Stroke stroke, Verb verb, SectionFrame frame) {
    Ornament ornament = verb.ornament();
    return ornament == null ? opened(stroke, frame) : with(stroke, ornament);
  }

  /** Why a sign may be refused; null for signs that every surface takes. */
  static SurfaceMessages.@Nullable Refusal refusal(Beat.Suffix suffix) {
    return switch (suffix) {
      case OPEN -> SurfaceMessages.Refusal.OPEN;
      case CHOKE -> SurfaceMessages.Refusal.CHOKE;
      case RIMSHOT -> SurfaceMessages.Refusal.RIMSHOT;
      case DIDDLE, OPEN_ROLL, ROLL, BUZZ -> null;
    };
  }

  /** Why a verb may be refused. */
  static SurfaceMessages.Refusal refusal(Verb verb) {
    return verb.ornament() == Ornament.CHOKE
        ? SurfaceMessages.Refusal.CHOKE
        : verb.ornament() == Ornament.RIMSHOT
            ? SurfaceMessages.Refusal.RIMSHOT
            : SurfaceMessages.Refusal.OPEN;
  }

  private static @Nullable Stroke with(Stroke stroke, Ornament ornament) {
    return takes(stroke.surface(), ornament)
        ? stroke.with(stroke.ornaments().with(ornament))
        : null;
  }

  private static boolean takes(Surface surface, Ornament ornament) {
    return ornament == Ornament.CHOKE
        ? surface.canChoke()
        : ornament != Ornament.RIMSHOT || surface.canRimshot();
  }

  /** The stroke on the open hi-hat, or the splashing one; null on other surfaces. */
  static @Nullable Stroke opened(Stroke stroke, SectionFrame frame) {
    Surface other = frame.kit().opened(stroke.surface());
    return other == null ? null : on(stroke, other);
  }

  /** The stroke on another surface; ornaments that it cannot take fall away. */
  static Stroke on(Stroke stroke, Surface surface) {
    Ornaments kept = stroke.ornaments();
    for (Ornament ornament : kept.list()) {
      if (!takes(surface, ornament)) {
        kept = kept.without(ornament);
      }
    }
    Stroke moved = stroke.on(surface);
    return kept.equals(stroke.ornaments()) ? moved : moved.with(kept);
  }
}
