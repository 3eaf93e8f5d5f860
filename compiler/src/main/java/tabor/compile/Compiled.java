package tabor.compile;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.groove.Lesson;
import tabor.source.Passage;
import tabor.source.Span;
import tabor.source.Spot;
import tabor.syntax.SectionSyntax;

/**
 * A compiled file.
 *
 * @param file the path it was given as
 * @param text its text
 * @param lesson what could be made of it; outputs are written only if there are no errors
 * @param syntax header and sections as read, in order
 * @param diagnostics in the order of the file; those of files in use are not among them
 * @param places where each passage stands, those of files in use included
 */
public record Compiled(
    Path file,
    String text,
    Lesson lesson,
    List<SectionSyntax> syntax,
    List<Diagnostic> diagnostics,
    Map<Passage, Where> places) {

  /** A passage's file and the offset of its first character there. */
  public record Where(Path file, int offset) {}

  /** The offsets of a spot in its file. */
  public Span span(Spot spot) {
    Where where = places.get(spot.passage());
    return spot.span().shift(where == null ? 0 : where.offset());
  }

  /** The file of a spot; null for a passage that is not of this compilation. */
  public @Nullable Path fileOf(Spot spot) {
    Where where = places.get(spot.passage());
    return where == null ? null : where.file();
  }

  /** True if nothing may be built. */
  public boolean hasErrors() {
    return diagnostics.stream().anyMatch(d -> d.severity() == Severity.ERROR);
  }
}
