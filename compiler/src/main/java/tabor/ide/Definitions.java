package tabor.ide;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.resolve.SheetNames;
import tabor.source.Spot;
import tabor.syntax.Heading;
import tabor.syntax.Line;
import tabor.syntax.Name;
import tabor.syntax.SectionKind;
import tabor.syntax.SectionSyntax;
import tabor.syntax.Text;

/** The names that a file gives, and those it may use from other files. */
final class Definitions {
  private Definitions() {}

  /**
   * A name where it is given.
   *
   * @param kind its set
   * @param name the name
   * @param title the section's title; null if it has none
   * @param compiled the file it stands in
   * @param section the passage it opens
   * @param spot the name itself
   */
  record Definition(
      NameKind kind,
      String name,
      @Nullable String title,
      Compiled compiled,
      SectionSyntax section,
      Spot spot) {}

  /** The names that a file gives itself, in order; of two equal ones only the first. */
  static List<Definition> own(Compiled compiled) {
    List<Definition> found = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (SectionSyntax section : compiled.syntax()) {
      of(compiled, section).filter(d -> seen.add(d.kind() + d.name())).ifPresent(found::add);
    }
    return found;
  }

  /** What a passage names itself; empty for the header and for a heading without a name. */
  static Optional<Definition> of(Compiled compiled, SectionSyntax section) {
    Line line = section.heading();
    if (line == null || !(line.statement() instanceof Heading heading)) {
      return Optional.empty();
    }
    Name name = heading.name();
    if (name == null) {
      return Optional.empty();
    }
    NameKind kind = NameKind.of(kind(section));
    Text title = heading.title();
    return Optional.of(
        new Definition(
            kind,
            name.text(),
            title == null ? null : title.value(),
            compiled,
            section,
            line.spot(name.span())));
  }

  /** What kind of section a passage is. */
  static SectionKind kind(SectionSyntax section) {
    return section.heading() != null && section.heading().statement() instanceof Heading heading
        ? heading.kind()
        : SectionKind.HEADER;
  }

  /**
   * The names that a file may use: those of the files it uses, in their order, then its own. Of
   * equal ones the first keeps the name.
   */
  static List<Definition> visible(Compiled compiled, Library library) {
    List<Definition> found = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (UseLinks.Link link : UseLinks.of(compiled)) {
      library.file(link.file()).ifPresent(file -> found.addAll(own(file)));
    }
    found.addAll(own(compiled));
    found.removeIf(entry -> !seen.add(entry.kind() + entry.name()));
    return found;
  }

  /** Where a name is given; of a variation where its sheet is. */
  static Optional<Definition> find(Compiled compiled, Library library, NameKind kind, String name) {
    List<Definition> visible = visible(compiled, library);
    Optional<Definition> own = named(visible, kind, name);
    SheetNames.Numbered variation = kind == NameKind.SECTION ? SheetNames.of(name) : null;
    return own.isPresent() || variation == null
        ? own
        : named(visible, kind, variation.sheet())
            .filter(entry -> kind(entry.section()) == SectionKind.SHEET);
  }

  private static Optional<Definition> named(List<Definition> visible, NameKind kind, String name) {
    return visible.stream()
        .filter(entry -> entry.kind() == kind && entry.name().equals(name))
        .findFirst();
  }
}
