package tabor.ide;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.parse.ExpectedWords.Item;
import tabor.syntax.At;
import tabor.syntax.Edit;
import tabor.syntax.KitStatement;
import tabor.syntax.LimbRef;
import tabor.syntax.Ref;
import tabor.syntax.Statement;
import tabor.syntax.TargetRef;

/** Which of the words that the grammar lets follow make sense in the section above the line. */
record ModelFilter(CompletionContext context) {
  private static final Set<String> LENGTHS = Set.of("time", "times", "bar", "bars");

  private static final Set<String> VARIED = Set.of("each", "and");

  /** The rules of things that a line says in any order, each once. */
  private static final List<String> ONCE = List.of("clause", "velocity", "shown", "limit");

  /**
   * True unless the word is a limb, a level or a verb for which there is no stroke above, or stands
   * on the line already and may do so once.
   */
  boolean allows(Item item, String word) {
    if (!fitsVaried(item, word) || isOutOfPlace(item, word)) {
      return false;
    }
    if (ONCE.stream().anyMatch(item::in) && context.expected().words().contains(word)) {
      return false;
    }
    if (item.in("playedPattern")) {
      return PatternFilter.of(context).map(PatternFilter::takesStrokes).orElse(true);
    }
    Groove groove = context.above().orElse(null);
    Statement statement = groove == null ? null : context.statement(item).orElse(null);
    if (groove == null || statement == null) {
      return true;
    }
    boolean opens = context.expected().words().isEmpty() || item.in("follows");
    if (opens && needsStrokes(statement) && groove.written().isEmpty()) {
      return false;
    }
    if (item.in("verb")) {
      return statement instanceof Edit.Change change
          && groove.written().stream()
              .anyMatch(s -> change.verb().takes(s.surface(), context.kit()));
    }
    if (item.in("whereLevel") && item.in("level")) {
      return chosen(item, groove).anyMatch(s -> s.level() == level(statement));
    }
    boolean reads = statement instanceof Edit.Follows || statement instanceof Edit.Split;
    if (item.in("target") || (item.in("limb") && reads)) {
      List<Limb> limbs = limbs(statement, word);
      return groove.written().stream().anyMatch(s -> limbs.contains(s.limb()));
    }
    Boolean foot =
        (item.in("limb") && statement instanceof Edit.Add add) ? isFoot(add.what()) : null;
    return foot == null || limbs(statement, word).stream().anyMatch(limb -> limb.isHand() != foot);
  }

  /** Choices of places stand on lines that vary; a part that varies repeats itself. */
  private boolean fitsVaried(Item item, String word) {
    List<String> words = context.expected().words();
    boolean varied = !words.isEmpty() && VARIED.contains(words.get(0));
    boolean choice = word.equals("|") || word.equals("of");
    if (choice && (item.in("atPlaces") || item.in("addedPlaces"))) {
      return varied;
    }
    return !(varied && word.equals("ostinato"));
  }

  /** Words of a chart that the lines above or the line itself leave no room for. */
  private boolean isOutOfPlace(Item item, String word) {
    List<String> words = context.expected().words();
    if (item.in("holdBeats") && word.equals("hold")) {
      return !context.playsAbove();
    }
    if (item.in("playClause") && word.equals("each")) {
      // A ladder and a trade are of one section.
      return words.contains("climb") || words.contains("trade");
    }
    // How long something is played is said once: in times, in bars or in minutes.
    return item.in("playClause")
        && word.equals("for")
        && words.contains("play")
        && words.stream().anyMatch(LENGTHS::contains);
  }

  private static boolean needsStrokes(Statement statement) {
    return statement instanceof Edit
        && !(statement instanceof Edit.Plays
            || statement instanceof Edit.Add
            || statement instanceof Edit.Take
            || statement instanceof Edit.Fill
            || statement instanceof Edit.Dynamic
            || statement instanceof Edit.Hairpin);
  }

  private static @Nullable Level level(Statement statement) {
    return SyntaxNodes.first(statement, At.class).map(At::where).map(Ref::value).orElse(null);
  }

  /** The strokes that the line chooses as far as it is written. */
  private Stream<Stroke> chosen(Item item, Groove groove) {
    Predicate<Stroke> meant = target(item);
    Set<Integer> bars = context.bars(item, groove);
    return groove.written().stream()
        .filter(stroke -> bars.contains(stroke.bar()) && meant.test(stroke));
  }

  /** The limbs that a word of a limb may turn out to be. */
  private List<Limb> limbs(Statement statement, String word) {
    int at = context.expected().start();
    for (LimbRef limb : SyntaxNodes.all(statement, LimbRef.class)) {
      if (limb.span().start() == at) {
        return limb.limb().isRight()
            ? List.of(Limb.RIGHT_HAND, Limb.RIGHT_FOOT)
            : List.of(Limb.LEFT_HAND, Limb.LEFT_FOOT);
      }
      if (limb.span().start() < at && at < limb.span().end()) {
        return List.of(limb.limb());
      }
    }
    return switch (word) {
      case "hands" -> List.of(Limb.RIGHT_HAND, Limb.LEFT_HAND);
      case "feet" -> List.of(Limb.RIGHT_FOOT, Limb.LEFT_FOOT);
      default -> List.of(Limb.values());
    };
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
    Statement statement = context.statement(item).orElse(null);
    if (statement instanceof KitStatement.Without without && without.plays() != null) {
      Surface lacking = context.kit().surface(without.surface().name());
      return surface -> lacking == null || surface.isFoot() == lacking.isFoot();
    }
    Predicate<Surface> had = surface -> context.kit().struck(surface) != null;
    if (statement instanceof Edit.Plays plays) {
      return had.and(surface -> surface.isFoot() == isFeet(plays.who()));
    }
    if (statement instanceof Edit.Split split) {
      return had.and(surface -> surface.isFoot() != split.limb().limb().isHand());
    }
    if (statement instanceof KitStatement) {
      return surface -> true;
    }
    Groove groove = context.above().orElse(null);
    if (!item.in("target") || groove == null) {
      return had;
    }
    Predicate<Surface> struck =
        surface -> groove.written().stream().map(Stroke::surface).anyMatch(s -> s.equals(surface));
    return statement instanceof Edit.Change change
        ? struck.and(surface -> change.verb().takes(surface, context.kit()))
        : struck;
  }

  private static boolean isFeet(TargetRef who) {
    return who instanceof TargetRef.OfGroup many
        ? many.group() == TargetRef.Group.FEET
        : who instanceof TargetRef.OfLimb one && !one.limb().limb().isHand();
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
    return statement == null ? stroke -> false : EditTargets.of(statement, context.kit());
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
