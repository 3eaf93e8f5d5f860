package tabor.compile;

import java.nio.file.Path;
import java.util.Collection;
import java.util.Collections;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.groove.Lesson;
import tabor.lists.Lists;
import tabor.source.Passage;
import tabor.source.Span;
import tabor.source.Spot;
import tabor.syntax.SectionKind;
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
 * @param unused the patterns and kits of the file that it does not use itself, each with the
 *     diagnostic that says so
 * @param uses the patterns and kits of other files that it uses
 */
public record Compiled(
    Path file,
    String text,
    Lesson lesson,
    List<SectionSyntax> syntax,
    List<Diagnostic> diagnostics,
    Map<Passage, Where> places,
    Map<Definition, Diagnostic> unused,
    Set<Definition> uses) {

  /** A file whose names no other file is asked for. */
  public Compiled(
      Path file,
      String text,
      Lesson lesson,
      List<SectionSyntax> syntax,
      List<Diagnostic> diagnostics,
      Map<Passage, Where> places) {
    this(file, text, lesson, syntax, diagnostics, places, Map.of(), Set.of());
  }

  /** The same with another lesson. */
  public Compiled with(Lesson other) {
    return new Compiled(file, text, other, syntax, diagnostics, places, unused, uses);
  }

  /** The same with other diagnostics. */
  public Compiled with(List<Diagnostic> others) {
    return new Compiled(file, text, lesson, syntax, others, places, unused, uses);
  }

  /** A passage's file and the offset of its first character there. */
  public record Where(Path file, int offset) {}

  /**
   * A pattern or kit of a file.
   *
   * @param file the same for every way to name the same file
   * @param kind pattern or kit
   * @param name its name
   */
  public record Definition(Path file, SectionKind kind, String name) {
    /** Makes the path absolute. */
    public Definition {
      file = file.toAbsolutePath().normalize();
    }
  }

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
    return Lists.any(diagnostics, d -> d.severity() == Severity.ERROR);
  }

  /** The same without warnings of names that one of the other files uses. */
  public Compiled besides(Collection<Compiled> others) {
    if (unused.isEmpty()) {
      return this;
    }
    Set<Definition> used = new HashSet<>();
    others.forEach(other -> used.addAll(other.uses()));
    Set<Diagnostic> settled = Collections.newSetFromMap(new IdentityHashMap<>());
    unused.forEach(
        (definition, diagnostic) -> {
          if (used.contains(definition)) {
            settled.add(diagnostic);
          }
        });
    return with(Lists.filter(diagnostics, d -> !settled.contains(d)));
  }
}
