package tabor.ide;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import tabor.compile.Compiled;
import tabor.ide.Catalog.Entry;
import tabor.ide.Catalog.Kind;
import tabor.kit.Kits;
import tabor.pattern.Rudiments;
import tabor.pattern.Timelines;
import tabor.source.Span;
import tabor.syntax.Line;
import tabor.syntax.SectionSyntax;

/** Where a name is given and where it is used, in all files of the workspace. */
public final class Names {
  private static final Pattern NAME = Pattern.compile("[a-z][a-z0-9]*(-[a-z0-9]+)*");

  private Names() {}

  /**
   * A place in a file.
   *
   * @param compiled the file
   * @param span where in it
   * @param given true where the name is given
   */
  public record Place(Compiled compiled, Span span, boolean given) {}

  /** A new name that cannot be, and why. */
  public static final class BadName extends RuntimeException {
    private static final long serialVersionUID = 1;

    BadName(String why) {
      super(why);
    }
  }

  /** Where the name under the cursor is given; empty for what is built in and for other things. */
  public static Optional<Place> definition(Compiled compiled, int offset, Library library) {
    Cursor cursor = Cursor.at(compiled, offset);
    if (cursor.leaf() == null) {
      return Optional.empty();
    }
    Optional<Entry> entry = entry(cursor, library);
    if (entry.isPresent()) {
      Compiled file = entry.get().compiled();
      return Optional.of(new Place(file, file.span(entry.get().spot()), true));
    }
    return KitNames.definition(cursor, library);
  }

  private static Optional<Entry> entry(Cursor cursor, Library library) {
    Leaf leaf = cursor.leaf();
    return leaf == null
        ? Optional.empty()
        : Kind.of(leaf.role())
            .flatMap(kind -> Catalog.find(cursor.compiled(), library, kind, leaf.text()));
  }

  /** Every place of the name under the cursor, in all files that can see it. */
  public static List<Place> references(Compiled compiled, int offset, Library library) {
    Cursor cursor = Cursor.at(compiled, offset);
    if (cursor.leaf() == null) {
      return List.of();
    }
    Optional<Entry> entry = entry(cursor, library);
    if (entry.isPresent()) {
      return places(entry.get(), compiled, library);
    }
    if (Kind.of(cursor.leaf().role()).isPresent()) {
      return uses(compiled, Kind.of(cursor.leaf().role()).get(), cursor.leaf().text());
    }
    return KitNames.references(cursor, library);
  }

  private static List<Place> places(Entry entry, Compiled asked, Library library) {
    List<Place> found = new ArrayList<>();
    for (Compiled file : filesWith(entry.compiled(), asked, library)) {
      boolean sees =
          Catalog.find(file, library, entry.kind(), entry.name())
              .filter(seen -> seen.spot().equals(entry.spot()))
              .isPresent();
      if (sees) {
        found.addAll(uses(file, entry.kind(), entry.name()));
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
    for (java.nio.file.Path path : library.files()) {
      if (found.stream().noneMatch(file -> file.file().equals(path))) {
        library
            .file(path)
            .filter(file -> Catalog.uses(file).contains(home.file()))
            .ifPresent(found::add);
      }
    }
    return found;
  }

  /** The places of a name in one file, also where it is given a second time. */
  private static List<Place> uses(Compiled file, Kind kind, String name) {
    List<Place> found = new ArrayList<>();
    for (SectionSyntax section : file.syntax()) {
      for (Line line : lines(section)) {
        for (Leaf leaf : Leaves.of(line)) {
          if (leaf.text().equals(name) && Kind.of(leaf.role()).filter(k -> k == kind).isPresent()) {
            found.add(new Place(file, file.span(line.spot(leaf.span())), leaf.isName()));
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

  /** What a rename would change; empty where nothing can be renamed. */
  public static Optional<Span> renamable(Compiled compiled, int offset, Library library) {
    Cursor cursor = Cursor.at(compiled, offset);
    if (cursor.leaf() == null
        || references(compiled, offset, library).stream().noneMatch(Place::given)) {
      return Optional.empty();
    }
    Leaf leaf = cursor.leaf();
    Span span = leaf.hit() == null ? leaf.span() : KitNames.letterSpan(cursor, leaf);
    return Optional.of(cursor.inFile(span));
  }

  /** The files of places, each once; comparing what was made of them would walk all of it. */
  private static List<Compiled> byFile(List<Place> places) {
    Map<java.nio.file.Path, Compiled> found = new LinkedHashMap<>();
    places.forEach(place -> found.put(place.compiled().file(), place.compiled()));
    return List.copyOf(found.values());
  }

  /**
   * The places to write a new name at.
   *
   * @throws BadName if the name is not one, or is taken; the message says why
   */
  public static List<Place> rename(Compiled compiled, int offset, String to, Library library) {
    Cursor cursor = Cursor.at(compiled, offset);
    List<Place> places = references(compiled, offset, library);
    if (cursor.leaf() == null || places.stream().noneMatch(Place::given)) {
      throw new BadName("There is no name of yours here to change");
    }
    Leaf leaf = cursor.leaf();
    Optional<Kind> kind = Kind.of(leaf.role());
    if (kind.isEmpty()) {
      KitNames.check(cursor, to, library);
      return places;
    }
    if (!NAME.matcher(to).matches()) {
      throw new BadName(
          "A name is a lower-case letter, then letters and digits with single hyphens between them:"
              + " "
              + to
              + " is not one");
    }
    boolean builtIn =
        switch (kind.get()) {
          case SECTION -> false;
          case PATTERN ->
              Rudiments.named(to).isPresent()
                  || Timelines.named(to).isPresent()
                  || to.equals("euclid");
          case KIT -> Kits.NAMES.contains(to);
        };
    boolean taken =
        byFile(places).stream()
            .anyMatch(file -> Catalog.find(file, library, kind.get(), to).isPresent());
    if (builtIn || (taken && !to.equals(leaf.text()))) {
      throw new BadName(
          "There is a "
              + kind.get().name().toLowerCase(java.util.Locale.ROOT)
              + " named "
              + to
              + " already");
    }
    return places;
  }
}
