package tabor.ide;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tabor.compile.Compiled;
import tabor.groove.Groove;
import tabor.ide.Definitions.Definition;
import tabor.ide.References.Place;
import tabor.ide.Rename.BadName;
import tabor.ide.SyntaxToken.Role;
import tabor.kit.Kit;
import tabor.source.Span;
import tabor.syntax.Heading;
import tabor.syntax.KitStatement;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.SectionSyntax;
import tabor.syntax.Subject;

/**
 * The names that a kit gives: its own surfaces and its letters. They hold in the sections that are
 * played on the kit, or on one that takes it over.
 */
final class KitReferences {
  private KitReferences() {}

  /**
   * A surface or letter where a kit gives it.
   *
   * @param kit the kit
   * @param text the surface's name, or the letter
   * @param letter true for a letter
   * @param line the kit's line
   * @param span the name on it
   */
  private record Given(Definition kit, String text, boolean letter, Line line, Span span) {}

  static Optional<Place> definition(Cursor cursor, Library library) {
    return given(cursor, library)
        .map(
            given ->
                new Place(
                    given.kit.compiled(),
                    given.kit.compiled().span(given.line.spot(given.span)),
                    true));
  }

  static List<Place> references(Cursor cursor, Library library) {
    Given given = given(cursor, library).orElse(null);
    if (given == null) {
      return List.of();
    }
    Set<String> kits = heirs(given.kit, library);
    List<Place> found = new ArrayList<>();
    for (Compiled file : References.filesWith(given.kit.compiled(), cursor.compiled(), library)) {
      for (SectionSyntax section : file.syntax()) {
        if (isUnder(file, section, kits)) {
          collect(file, section, given, found);
        }
      }
    }
    return found;
  }

  private static void collect(
      Compiled file, SectionSyntax section, Given given, List<Place> found) {
    for (Line line : References.lines(section)) {
      boolean lettered = isLettered(line);
      for (SyntaxToken token : SyntaxTokens.of(line)) {
        boolean same = token.text().equals(given.text);
        boolean letter =
            given.letter
                && (token.role() == Role.LETTER_NAME || (token.role() == Role.HIT && lettered));
        boolean surface =
            !given.letter && (token.role() == Role.SURFACE || token.role() == Role.SURFACE_NAME);
        if (same && (letter || surface)) {
          Span span = token.letterSpan(line);
          found.add(new Place(file, file.span(line.spot(span)), token.givesName()));
        }
      }
    }
  }

  /** What the cursor's word or letter is given by, if a kit of the writer's gives it. */
  private static Optional<Given> given(Cursor cursor, Library library) {
    SyntaxToken token = cursor.token();
    if (token == null || cursor.line() == null) {
      return Optional.empty();
    }
    boolean letter =
        token.role() == Role.LETTER_NAME || (token.role() == Role.HIT && isLettered(cursor.line()));
    boolean surface = token.role() == Role.SURFACE || token.role() == Role.SURFACE_NAME;
    if (!letter && !surface) {
      return Optional.empty();
    }
    Optional<Definition> kit = kitOf(cursor.compiled(), cursor.section(), library);
    Set<String> seen = new HashSet<>();
    while (kit.isPresent() && seen.add(kit.get().name())) {
      Optional<Given> found = given(kit.get(), token.text(), letter);
      if (found.isPresent()) {
        return found;
      }
      kit = parent(kit.get(), library);
    }
    return Optional.empty();
  }

  private static Optional<Given> given(Definition kit, String text, boolean letter) {
    for (Line line : kit.section().lines()) {
      for (SyntaxToken token : SyntaxTokens.of(line)) {
        Role wanted = letter ? Role.LETTER_NAME : Role.SURFACE_NAME;
        if (token.role() == wanted
            && token.text().equals(text)
            && line.statement() instanceof KitStatement) {
          return Optional.of(new Given(kit, text, letter, line, token.span()));
        }
      }
    }
    return Optional.empty();
  }

  /** The kit of the writer's that a section is played on, or that it is. */
  private static Optional<Definition> kitOf(Compiled file, SectionSyntax section, Library library) {
    if (section.heading() != null && section.heading().statement() instanceof Heading.Kit) {
      return Definitions.of(file, section);
    }
    return Cursor.grooveOf(file, section.passage())
        .map(Groove::setting)
        .flatMap(setting -> Definitions.find(file, library, NameKind.KIT, setting.kit().name()));
  }

  private static Optional<Definition> parent(Definition kit, Library library) {
    return kit.section().heading() != null
            && kit.section().heading().statement() instanceof Heading.Kit heading
            && heading.like() != null
        ? Definitions.find(kit.compiled(), library, NameKind.KIT, heading.like().text())
        : Optional.empty();
  }

  /** The names of the kit and of those made from it, as far as the workspace has any. */
  private static Set<String> heirs(Definition kit, Library library) {
    Set<String> names = new HashSet<>();
    names.add(kit.name());
    boolean grew = true;
    List<Compiled> files = References.filesWith(kit.compiled(), kit.compiled(), library);
    while (grew) {
      grew = false;
      for (Compiled file : files) {
        for (Definition entry : Definitions.own(file)) {
          if (entry.kind() == NameKind.KIT
              && parent(entry, library).filter(up -> names.contains(up.name())).isPresent()) {
            grew |= names.add(entry.name());
          }
        }
      }
    }
    return names;
  }

  private static boolean isUnder(Compiled file, SectionSyntax section, Set<String> kits) {
    if (section.heading() != null && section.heading().statement() instanceof Heading.Kit heading) {
      return kits.contains(heading.name().text());
    }
    return Cursor.grooveOf(file, section.passage())
        .filter(groove -> kits.contains(groove.setting().kit().name()))
        .isPresent();
  }

  /** True for a part whose letters are the kit's. */
  static boolean isLettered(Line line) {
    return line.statement() instanceof PartStatement.Lane lane
        && lane.subject() instanceof Subject.OfLimb;
  }

  /** Throws if a letter or surface cannot be called so. */
  static void check(Cursor cursor, String to, Library library) {
    Given given =
        given(cursor, library)
            .orElseThrow(() -> new BadName("There is no name of yours here to change"));
    if (given.letter && !to.matches("[a-wyz]")) {
      throw new BadName("A letter is one lower-case letter, and not x");
    }
    if (!given.letter && !to.matches("[a-z][a-z0-9]*(-[a-z0-9]+)*(\\.[a-z][a-z0-9]*)?")) {
      throw new BadName(
          "A surface is a lower-case name, or two with a dot between them: " + to + " is neither");
    }
    Kit kit = cursor.kit();
    boolean taken = given.letter ? kit.letter(to.charAt(0)) != null : kit.surface(to) != null;
    if ((taken || given(given.kit, to, given.letter).isPresent()) && !to.equals(given.text)) {
      throw new BadName("The kit has " + to + " already");
    }
  }
}
