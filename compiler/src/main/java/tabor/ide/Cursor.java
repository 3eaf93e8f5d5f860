package tabor.ide;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.groove.Groove;
import tabor.groove.Section;
import tabor.groove.Sheet;
import tabor.kit.Kit;
import tabor.rhythm.Meter;
import tabor.source.Passage;
import tabor.source.Span;
import tabor.source.Spot;
import tabor.syntax.Line;
import tabor.syntax.SectionSyntax;

/**
 * A place in a compiled file.
 *
 * @param compiled the file
 * @param offset offset in the file
 * @param section the passage that holds it
 * @param start where that passage starts in the file
 * @param line the line that holds it; null on a blank line or in a comment of its own
 * @param token the token that holds it or ends there; null between tokens
 */
public record Cursor(
    Compiled compiled,
    int offset,
    SectionSyntax section,
    int start,
    @Nullable Line line,
    @Nullable SyntaxToken token) {

  /** The place of an offset between 0 and the text's length. */
  public static Cursor at(Compiled compiled, int offset) {
    int index = 0;
    List<SectionSyntax> sections = compiled.syntax();
    for (int i = 1; i < sections.size() && startOf(compiled, sections.get(i)) <= offset; i++) {
      index = i;
    }
    SectionSyntax section = sections.get(index);
    int start = startOf(compiled, section);
    int inside = offset - start;
    Line line = lineAt(section, inside);
    SyntaxToken token = null;
    if (line != null) {
      int local = inside - line.start();
      for (SyntaxToken candidate : SyntaxTokens.of(line)) {
        // Right between two, the one that starts there counts, as with a block cursor; but a
        // sign behind a word does not.
        if (candidate.span().touches(local)
            && (token == null || candidate.role() != SyntaxToken.Role.SIGN)) {
          token = candidate;
        }
      }
    }
    return new Cursor(compiled, offset, section, start, line, token);
  }

  static int startOf(Compiled compiled, SectionSyntax section) {
    Compiled.Where where = compiled.places().get(section.passage());
    return where == null ? 0 : where.offset();
  }

  private static @Nullable Line lineAt(SectionSyntax section, int inside) {
    String text = section.passage().text();
    if (section.heading() != null && holds(text, section.heading(), inside)) {
      return section.heading();
    }
    for (Line line : section.lines()) {
      if (holds(text, line, inside)) {
        return line;
      }
    }
    return null;
  }

  /** True from the line's first character to its end, its comment and trailing spaces included. */
  private static boolean holds(String text, Line line, int inside) {
    if (inside < line.start()) {
      return false;
    }
    return inside <= LineEnds.end(text, line.start() + line.statement().span().end());
  }

  /** The section's strokes; empty for a header, pattern, kit or chart, and where it has errors. */
  public Optional<Groove> groove() {
    return grooveOf(compiled, section.passage());
  }

  static Optional<Groove> grooveOf(Compiled compiled, Passage passage) {
    for (Section made : compiled.lesson().sections()) {
      if (made.heading().passage() == passage && made instanceof Groove groove) {
        return Optional.of(groove);
      }
    }
    return Optional.empty();
  }

  static Optional<Sheet> sheetOf(Compiled compiled, Passage passage) {
    return compiled.lesson().sheets().stream()
        .filter(sheet -> sheet.heading().passage() == passage)
        .findFirst();
  }

  /** A span of the line in the file. */
  public Span inFile(Span span) {
    return span.shift(start + (line == null ? 0 : line.start()));
  }

  /** A span of the line in its passage. */
  public Spot spot(Span span) {
    return new Spot(section.passage(), span.shift(line == null ? 0 : line.start()));
  }

  /** The meter of a bar; that of the header outside a groove or step. */
  Meter meter(int bar) {
    return groove().map(groove -> groove.meter(bar)).orElse(compiled.lesson().setting().meter());
  }

  /** The kit of the section, as far as it is known; else the header's. */
  Kit kit() {
    return groove()
        .or(() -> sheetOf(compiled, section.passage()).map(sheet -> sheet.grooves().get(0)))
        .map(Groove::setting)
        .orElse(compiled.lesson().setting())
        .kit();
  }
}
