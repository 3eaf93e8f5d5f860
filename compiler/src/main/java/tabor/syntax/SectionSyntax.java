package tabor.syntax;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Diagnostic;
import tabor.source.Passage;

/**
 * A passage as read: the header, which has no heading and comes first, or a section.
 *
 * @param passage its text
 * @param heading its first line if it is a section, whose statement is a {@link Heading}; null for
 *     the header
 * @param lines the lines below the heading that say something, in order
 * @param problems what could not be read
 */
public record SectionSyntax(
    Passage passage, @Nullable Line heading, List<Line> lines, List<Diagnostic> problems) {
  /** Copies the lists. */
  public SectionSyntax {
    lines = List.copyOf(lines);
    problems = List.copyOf(problems);
  }

  /** True if its heading or one of its lines could not be read. */
  public boolean hasBrokenLine() {
    if (heading != null && heading.statement() instanceof Heading.Faulty) {
      return true;
    }
    for (Line line : lines) {
      if (line.statement() instanceof Statement.Broken) {
        return true;
      }
    }
    return false;
  }
}
