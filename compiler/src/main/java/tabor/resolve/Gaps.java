package tabor.resolve;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.groove.Level;
import tabor.kit.Kit;
import tabor.kit.Surface;
import tabor.lists.Lists;
import tabor.syntax.Heading;
import tabor.syntax.Line;
import tabor.syntax.SectionSyntax;
import tabor.syntax.Statement;
import tabor.syntax.Subject;
import tabor.syntax.Verb;

/**
 * What a section may lack that its source does not, because something written could not be read or
 * placed. What such a gap may hide is not missed; everything else is.
 *
 * @param hands strokes of the hands may be missing, or stand elsewhere than meant
 * @param feet the same for the feet
 * @param levels levels may be others than meant
 * @param lines some line could not be read
 */
public record Gaps(boolean hands, boolean feet, boolean levels, boolean lines) {
  /** Nothing is missing. */
  public static final Gaps NONE = new Gaps(false, false, false, false);

  /** Anything may be missing. */
  public static final Gaps ALL = new Gaps(true, true, true, true);

  /** A line that changes neither strokes nor levels could not be read. */
  private static final Gaps LINES = new Gaps(false, false, false, true);

  private static final Gaps LEVELS = new Gaps(false, false, true, true);
  private static final Gaps HANDS = new Gaps(true, false, false, true);
  private static final Gaps FEET = new Gaps(false, true, false, true);

  /** Lines other than verbs on strokes that bring no stroke and move none. */
  private static final Set<String> NO_STROKES =
      Set.of(
          "text",
          "teacher",
          "goal",
          "page",
          "show",
          "tempo",
          "dynamic",
          "crescendo",
          "diminuendo",
          "only");

  private static final Set<String> BEFORE_TARGETS =
      Set.of("ostinato", "add", "double", "triple", "open", "shift", "move", "split");

  private static final int MOST_WORDS = 4;

  /** True if anything at all could not be read or placed. */
  public boolean any() {
    return strokes() || levels || lines;
  }

  /** True if strokes may be missing. */
  boolean strokes() {
    return hands || feet;
  }

  Gaps and(Gaps other) {
    return new Gaps(
        hands || other.hands, feet || other.feet, levels || other.levels, lines || other.lines);
  }

  /** True if strokes of some targets, of a level if one is wanted, may be missing. */
  boolean hide(List<TargetFilter> targets, @Nullable Level level) {
    return (level != null && levels)
        || (hands && Lists.any(targets, target -> target.mayBe(true)))
        || (feet && Lists.any(targets, target -> target.mayBe(false)));
  }

  /** What may be missing where a part of this subject could not be read to its end. */
  static Gaps of(Subject subject, Kit kit) {
    TargetFilter filter = TargetFilter.of(subject.target(), kit);
    return filter == null ? ALL : new Gaps(filter.mayBe(true), filter.mayBe(false), false, true);
  }

  /** What may be missing because of the lines of a section that could not be read. */
  static Gaps of(SectionSyntax syntax, Kit kit) {
    Line heading = syntax.heading();
    if (heading != null && heading.statement() instanceof Heading.Faulty) {
      return ALL;
    }
    Gaps gaps = NONE;
    for (Line line : syntax.lines()) {
      if (line.statement() instanceof Statement.Broken broken) {
        gaps = gaps.and(of(line, broken, kit));
      }
    }
    return gaps;
  }

  private static Gaps of(Line line, Statement.Broken broken, Kit kit) {
    String word = broken.keyword();
    if (broken.lane()) {
      return whose(line.spot().text(), kit);
    }
    for (Verb verb : Verb.values()) {
      if (verb.word().equals(word)) {
        return switch (verb.kind()) {
          case DROP, ORNAMENT -> LINES;
          case LEVEL -> LEVELS;
          case STROKES, OPEN -> whose(line.spot().text(), kit);
        };
      }
    }
    return NO_STROKES.contains(word) ? LINES : whose(line.spot().text(), kit);
  }

  /** Whose strokes a line is about, as far as it can be seen from its first words. */
  private static Gaps whose(String line, Kit kit) {
    List<String> words = List.of(line.split("[\\s:]+", MOST_WORDS));
    int at = BEFORE_TARGETS.contains(words.get(0)) ? 1 : 0;
    String word = words.size() > at ? words.get(at) : "";
    boolean foot = words.size() > at + 1 && words.get(at + 1).equals("foot");
    Surface surface = kit.surface(word);
    if (surface != null) {
      return surface.isFoot() ? FEET : HANDS;
    }
    return switch (word) {
      case "hands" -> HANDS;
      case "feet" -> FEET;
      case "right", "left" -> foot ? FEET : HANDS;
      default -> ALL;
    };
  }
}
