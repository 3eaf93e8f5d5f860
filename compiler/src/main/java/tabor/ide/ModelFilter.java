package tabor.ide;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.parse.ExpectedWords.Item;
import tabor.syntax.Edit;
import tabor.syntax.LimbRef;
import tabor.syntax.Statement;
import tabor.syntax.SurfaceRef;
import tabor.syntax.TargetRef;
import tabor.syntax.Verb;

/** Which of the words that the grammar lets follow make sense in the section above the line. */
final class ModelFilter {
  private final CompletionContext context;

  ModelFilter(CompletionContext context) {
    this.context = context;
  }

  /** True unless the word is a limb that cannot be meant. */
  boolean allows(Item item, String word) {
    Groove groove = context.above().orElse(null);
    if (groove == null) {
      return true;
    }
    if (item.in("target")) {
      return limbs(item, word).stream()
          .anyMatch(limb -> groove.written().stream().anyMatch(s -> s.limb() == limb));
    }
    Statement statement = item.in("limb") ? context.statement(item).orElse(null) : null;
    Boolean foot = statement instanceof Edit.Add add ? isFoot(add.what()) : null;
    return foot == null || limbs(item, word).stream().anyMatch(limb -> limb.isHand() != foot);
  }

  /** The limbs that a word of a limb may turn out to be. */
  private List<Limb> limbs(Item item, String word) {
    Statement statement = context.statement(item).orElse(null);
    List<LimbRef> named = statement == null ? List.of() : SyntaxNodes.all(statement, LimbRef.class);
    int at = context.expected().start();
    for (LimbRef limb : named) {
      boolean hereOrBefore = limb.span().start() <= at && at <= limb.span().end();
      if (hereOrBefore) {
        return limb.spelledOut() && limb.span().start() < at
            ? spelled(limb.limb(), word)
            : List.of(limb.limb(), limb.limb().isRight() ? Limb.RIGHT_FOOT : Limb.LEFT_FOOT);
      }
    }
    return switch (word) {
      case "hands" -> List.of(Limb.RIGHT_HAND, Limb.LEFT_HAND);
      case "feet" -> List.of(Limb.RIGHT_FOOT, Limb.LEFT_FOOT);
      default -> List.of(Limb.values());
    };
  }

  private static List<Limb> spelled(Limb limb, String word) {
    boolean foot = word.equals("foot");
    boolean right = limb.isRight();
    return List.of(
        foot
            ? right ? Limb.RIGHT_FOOT : Limb.LEFT_FOOT
            : right ? Limb.RIGHT_HAND : Limb.LEFT_HAND);
  }

  private @Nullable Boolean isFoot(TargetRef target) {
    if (target instanceof TargetRef.OfSurface named) {
      Surface surface = context.kit().surface(named.surface().name());
      return surface == null ? null : surface.isFoot();
    }
    return null;
  }

  /** The surfaces that may stand there. */
  Predicate<Surface> surfaces(Item item) {
    if (item.in("newSurface")) {
      return surface -> false;
    }
    if (item.in("kitLine") || item.in("without") || item.in("newLetter") || item.in("placed")) {
      return surface -> true;
    }
    Statement statement = context.statement(item).orElse(null);
    Predicate<Surface> had = surface -> context.kit().struck(surface) != null;
    if (statement instanceof Edit.Plays plays) {
      return had.and(surface -> surface.isFoot() == isFeet(plays.who()));
    }
    if (statement instanceof Edit.Split split) {
      return had.and(surface -> surface.isFoot() != split.limb().limb().isHand());
    }
    Groove groove = context.above().orElse(null);
    if (!item.in("target") || groove == null) {
      return had;
    }
    Predicate<Surface> struck =
        surface ->
            groove.written().stream().map(Stroke::surface).anyMatch(s -> s.equals(surface));
    return statement instanceof Edit.Change change
        ? struck.and(surface -> takes(surface, change.verb()))
        : struck;
  }

  private static boolean isFeet(TargetRef who) {
    return who.match(
        new TargetRef.Cases<>() {
          @Override
          public Boolean limb(LimbRef limb) {
            return !limb.limb().isHand();
          }

          @Override
          public Boolean group(TargetRef.Group group) {
            return group == TargetRef.Group.FEET;
          }

          @Override
          public Boolean surface(SurfaceRef surface) {
            return false;
          }
        });
  }

  private boolean takes(Surface surface, Verb verb) {
    return switch (verb) {
      case CHOKE -> surface.canChoke();
      case RIMSHOT -> surface.canRimshot();
      case OPEN -> context.kit().opened(surface) != null;
      case DROP, ACCENT, GHOST, PLAIN, DOUBLE, TRIPLE, FLAM, DRAG, RUFF, BUZZ, DIDDLE -> true;
    };
  }

  /** True where a count need not have a stroke. */
  boolean readsAnyCount(Item item) {
    Statement statement = context.statement(item).orElse(null);
    return statement instanceof Edit.Add
        || statement instanceof Edit.Dynamic
        || statement instanceof Edit.Hairpin
        || statement instanceof Edit.Fill
        || (statement instanceof Edit.Move move
            && move.to().span().start() == context.expected().start());
  }

  /** The strokes that the line is about. */
  Predicate<Stroke> target(Item item) {
    Statement statement = context.statement(item).orElse(null);
    if (statement instanceof Edit.Split split) {
      return stroke -> stroke.limb() == split.limb().limb();
    }
    if (statement instanceof Edit.Follows follows) {
      return stroke -> stroke.limb() == follows.limb().limb();
    }
    List<TargetRef> targets =
        statement == null ? List.of() : SyntaxNodes.all(statement, TargetRef.class);
    return stroke -> targets.stream().anyMatch(target -> TargetStrokes.isMeant(target, stroke));
  }

  /** The bars that may be named: those in which the line finds what it is about. */
  Set<Integer> bars(Item item, Groove groove) {
    if (readsAnyCount(item)) {
      return NamedBars.all(groove);
    }
    Predicate<Stroke> meant = target(item);
    Set<Integer> found = new TreeSet<>();
    groove.written().stream().filter(meant).forEach(stroke -> found.add(stroke.bar()));
    return found;
  }
}
