package tabor.ide;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.ide.Leaf.Role;
import tabor.source.Spot;
import tabor.syntax.Heading;
import tabor.syntax.Line;
import tabor.syntax.SectionSyntax;
import tabor.syntax.SettingStatement;
import tabor.syntax.Word;

/** The names that a file gives, and those it may use from other files. */
public final class Catalog {
  /** The three sets of names. */
  public enum Kind {
    SECTION,
    PATTERN,
    KIT;

    /** The set that a leaf's name belongs to; empty for what names none of these. */
    static Optional<Kind> of(Role role) {
      return switch (role) {
        case SECTION, SECTION_NAME -> Optional.of(SECTION);
        case PATTERN, PATTERN_NAME -> Optional.of(PATTERN);
        case KIT, KIT_NAME -> Optional.of(KIT);
        default -> Optional.empty();
      };
    }
  }

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
  public record Entry(
      Kind kind,
      String name,
      @Nullable String title,
      Compiled compiled,
      SectionSyntax section,
      Spot spot) {}

  private Catalog() {}

  /** The names that a file gives itself, in order; of two equal ones only the first. */
  public static List<Entry> own(Compiled compiled) {
    List<Entry> found = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (SectionSyntax section : compiled.syntax()) {
      entry(compiled, section)
          .filter(entry -> seen.add(entry.kind() + entry.name()))
          .ifPresent(found::add);
    }
    return found;
  }

  /** What a passage names itself; empty for the header and for a heading without a name. */
  static Optional<Entry> entry(Compiled compiled, SectionSyntax section) {
    Line line = section.heading();
    if (line == null || !(line.statement() instanceof Heading heading)) {
      return Optional.empty();
    }
    Word name = heading.name();
    if (name == null) {
      return Optional.empty();
    }
    return Optional.of(
        new Entry(
            kind(heading), name.text(), title(heading), compiled, section, line.spot(name.span())));
  }

  private static Kind kind(Heading heading) {
    if (heading instanceof Heading.Faulty faulty) {
      return switch (faulty.keyword().text()) {
        case "pattern" -> Kind.PATTERN;
        case "kit" -> Kind.KIT;
        default -> Kind.SECTION;
      };
    }
    return heading instanceof Heading.Pattern
        ? Kind.PATTERN
        : heading instanceof Heading.Kit ? Kind.KIT : Kind.SECTION;
  }

  static @Nullable String title(Heading heading) {
    tabor.syntax.Text text =
        heading instanceof Heading.Groove groove
            ? groove.title()
            : heading instanceof Heading.Step step
                ? step.title()
                : heading instanceof Heading.Chart chart ? chart.title() : null;
    return text == null ? null : text.value();
  }

  /**
   * The names that a file may use: those of the files it uses, in their order, then its own. Of
   * equal ones the first keeps the name.
   */
  public static List<Entry> visible(Compiled compiled, Library library) {
    List<Entry> found = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (Path used : uses(compiled)) {
      library.file(used).ifPresent(file -> found.addAll(own(file)));
    }
    found.addAll(own(compiled));
    found.removeIf(entry -> !seen.add(entry.kind() + entry.name()));
    return found;
  }

  /** Where a name is given. */
  public static Optional<Entry> find(Compiled compiled, Library library, Kind kind, String name) {
    return visible(compiled, library).stream()
        .filter(entry -> entry.kind() == kind && entry.name().equals(name))
        .findFirst();
  }

  /** The files that the header names after {@code use}. */
  public static List<Path> uses(Compiled compiled) {
    List<Path> found = new ArrayList<>();
    if (compiled.syntax().isEmpty()) {
      return found;
    }
    for (Line line : compiled.syntax().get(0).lines()) {
      if (line.statement() instanceof SettingStatement.Use use) {
        used(compiled.file(), use.file().value()).ifPresent(found::add);
      }
    }
    return found;
  }

  /** The path of a file that another one names. */
  public static Optional<Path> used(Path from, String name) {
    try {
      return Optional.of(from.resolveSibling(name).normalize());
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }
}
