package tabor.ide;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.ide.Definitions.Definition;
import tabor.resolve.SheetNames;
import tabor.source.Span;
import tabor.syntax.Line;
import tabor.syntax.SectionKind;
import tabor.syntax.SectionSyntax;

/** Where a name is given and where it is used, in all files of the workspace. */
public final class References {
  private References() {}

  /**
   * A place in a file.
   *
   * @param compiled the file
   * @param span where in it
   * @param given true where the name is given
   */
  public record Place(Compiled compiled, Span span, boolean given) {}

  /** Where the name under the cursor is given; empty for what is built in and for other things. */
  public static Optional<Place> definition(Compiled compiled, int offset, Library library) {
    Cursor cursor = Cursor.at(compiled, offset);
    if (cursor.token() == null) {
      return Optional.empty();
    }
    Optional<Definition> entry = entry(cursor, library);
    if (entry.isPresent()) {
      Compiled file = entry.get().compiled();
      return Optional.of(new Place(file, file.span(entry.get().spot()), true));
    }
    return KitReferences.definition(cursor, library);
  }

  private static Optional<Definition> entry(Cursor cursor, Library library) {
    SyntaxToken token = cursor.token();
    return token == null
        ? Optional.empty()
        : NameKind.of(token.role())
            .flatMap(kind -> Definitions.find(cursor.compiled(), library, kind, token.text()));
  }

  /** Every place of the name under the cursor, in all files that can see it. */
  public static List<Place> references(Compiled compiled, int offset, Library library) {
    Cursor cursor = Cursor.at(compiled, offset);
    if (cursor.token() == null) {
      return List.of();
    }
    Optional<Definition> entry = entry(cursor, library);
    if (entry.isPresent()) {
      return places(entry.get(), compiled, library);
    }
    if (NameKind.of(cursor.token().role()).isPresent()) {
      return uses(compiled, NameKind.of(cursor.token().role()).get(), cursor.token().text());
    }
    return KitReferences.references(cursor, library);
  }

  private static List<Place> places(Definition entry, Compiled asked, Library library) {
    List<Place> found = new ArrayList<>();
    for (Compiled file : filesWith(entry.compiled(), asked, library)) {
      boolean sees =
          Definitions.find(file, library, entry.kind(), entry.name())
              .filter(seen -> seen.spot().equals(entry.spot()))
              .isPresent();
      if (sees) {
        found.addAll(uses(file, entry.kind(), entry.name()));
        if (Definitions.kind(entry.section()) == SectionKind.SHEET) {
          found.addAll(variations(file, entry, library));
        }
      }
    }
    return found;
  }

  /** The file itself and all others of the workspace that use it; each once. */
  static List<Compiled> filesWith(Compiled home, Compiled asked, Library library) {
    List<Compiled> found = new ArrayList<>();
    found.add(home);
    if (asked != home) {
      found.add(asked);
    }
    for (Path path : library.files()) {
      if (found.stream().noneMatch(file -> file.file().equals(path))
          && library.mayUseOthers(path)) {
        library.file(path).filter(file -> uses(file, home)).ifPresent(found::add);
      }
    }
    return found;
  }

  private static boolean uses(Compiled file, Compiled home) {
    return UseLinks.of(file).stream().anyMatch(link -> link.file().equals(home.file()));
  }

  /** The places of a name in one file, also where it is given a second time. */
  private static List<Place> uses(Compiled file, NameKind kind, String name) {
    return places(
        file,
        token ->
            token.text().equals(name)
                    && NameKind.of(token.role()).filter(k -> k == kind).isPresent()
                ? token.span()
                : null);
  }

  /** The places where variations of a sheet are named: the part that is the sheet's name. */
  private static List<Place> variations(Compiled file, Definition sheet, Library library) {
    return places(
        file,
        token -> {
          SheetNames.Numbered named = SheetNames.of(token.text());
          boolean meant =
              token.role() == SyntaxToken.Role.SECTION
                  && named != null
                  && named.sheet().equals(sheet.name())
                  && Definitions.find(file, library, NameKind.SECTION, token.text())
                      .filter(seen -> seen.spot().equals(sheet.spot()))
                      .isPresent();
          int start = token.span().start();
          return meant ? new Span(start, start + sheet.name().length()) : null;
        });
  }

  /** What of each token of a file is meant; null for nothing. */
  private static List<Place> places(Compiled file, Function<SyntaxToken, @Nullable Span> meant) {
    List<Place> found = new ArrayList<>();
    for (SectionSyntax section : file.syntax()) {
      for (Line line : lines(section)) {
        for (SyntaxToken token : SyntaxTokens.of(line)) {
          Span span = meant.apply(token);
          if (span != null) {
            found.add(new Place(file, file.span(line.spot(span)), token.givesName()));
          }
        }
      }
    }
    return found;
  }

  static List<Line> lines(SectionSyntax section) {
    List<Line> all = new ArrayList<>();
    if (section.heading() != null) {
      all.add(section.heading());
    }
    all.addAll(section.lines());
    return all;
  }
}
