package tabor.ide;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tabor.ide.Definitions.Definition;
import tabor.kit.Kit;
import tabor.kit.Surface;
import tabor.pattern.PatternPlace;
import tabor.source.Span;
import tabor.syntax.Heading;
import tabor.syntax.LimbRef;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.Subject;
import tabor.syntax.SurfaceRef;

/** Which patterns a part can play: those whose letters all mean something in it. */
final class PatternFilter {
  private final Set<Character> letters;

  private PatternFilter(PartStatement.Played part, Kit kit) {
    this.letters = part.subject().match(new Letters(kit));
  }

  /** Asks about the part that the line writes; empty where it writes none. */
  static Optional<PatternFilter> of(CompletionContext context) {
    return context
        .read(context.lineWith("spread 1 over 2 in eighths"))
        .filter(PartStatement.Played.class::isInstance)
        .map(part -> new PatternFilter((PartStatement.Played) part, context.kit()));
  }

  private record Letters(Kit kit) implements Subject.Cases<Set<Character>> {
    private static final Set<Character> SIDES = Set.of('r', 'l', 'b', 'x');

    @Override
    public Set<Character> limb(LimbRef limb) {
      Set<Character> found = new HashSet<>(Set.of('x'));
      for (Map.Entry<Character, String> entry : kit.letters().entrySet()) {
        Surface surface = kit.surface(entry.getValue());
        if (surface != null && surface.isFoot() != limb.limb().isHand()) {
          found.add(entry.getKey());
        }
      }
      return found;
    }

    @Override
    public Set<Character> hands(Span span) {
      return SIDES;
    }

    @Override
    public Set<Character> feet(Span span) {
      return SIDES;
    }

    @Override
    public Set<Character> line(Span span) {
      return Set.of('r', 'l', 'b', 'k', 'p');
    }

    @Override
    public Set<Character> surface(SurfaceRef surface) {
      return SIDES;
    }
  }

  /** True if the part has a meaning for each letter of a rudiment. */
  boolean takes(List<PatternPlace> places) {
    return places.stream()
        .map(PatternPlace::letter)
        .allMatch(letter -> letter == '.' || letters.contains(letter));
  }

  /** True for the strokes of a timeline or of {@code spread}, which leave the limb open. */
  boolean takesStrokes() {
    return letters.contains('x');
  }

  /** True if the part has a meaning for each letter of a pattern that a file defines. */
  boolean takes(Definition pattern) {
    Line line = pattern.section().heading();
    return line == null
        || !(line.statement() instanceof Heading.Pattern)
        || SyntaxTokens.of(line).stream()
            .map(SyntaxToken::hit)
            .allMatch(hit -> hit == null || letters.contains(hit.letter()));
  }
}
