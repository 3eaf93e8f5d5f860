package tabor.ide;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import tabor.ide.Definitions.Definition;
import tabor.pattern.PatternPlace;
import tabor.syntax.Heading;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;

/** Which patterns a part can play: those whose letters all mean something in it. */
record PatternFilter(Set<Character> letters) {
  /** Asks about the part that the line writes; empty where it writes none. */
  static Optional<PatternFilter> of(CompletionContext context) {
    return context
        .read(context.lineWith("spread 1 over 2 in eighths"))
        .filter(PartStatement.Played.class::isInstance)
        .map(part -> ((PartStatement.Played) part).subject())
        .map(part -> new PatternFilter(part.match(new SubjectLetters(context.kit())).keySet()));
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
