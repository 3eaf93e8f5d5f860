package tabor.ide;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import tabor.compile.Compiled;
import tabor.ide.References.Place;
import tabor.kit.Kits;
import tabor.parse.Vocabulary;
import tabor.pattern.Rudiments;
import tabor.pattern.Timelines;
import tabor.source.Span;

/** A new name for a section, a pattern, a kit, or a kit's surface or letter. */
public final class Rename {
  private static final Pattern NAME = Pattern.compile("[a-z][a-z0-9]*(-[a-z0-9]+)*");

  private Rename() {}

  /** A new name that cannot be, and why. */
  public static final class BadName extends RuntimeException {
    private static final long serialVersionUID = 1;

    BadName(String why) {
      super(why);
    }
  }

  /** What a rename would change; empty where nothing can be renamed. */
  public static Optional<Span> span(Compiled compiled, int offset, Library library) {
    Cursor cursor = Cursor.at(compiled, offset);
    if (cursor.token() == null
        || References.references(compiled, offset, library).stream().noneMatch(Place::given)) {
      return Optional.empty();
    }
    SyntaxToken token = cursor.token();
    if (cursor.line() == null) {
      return Optional.empty();
    }
    Span whole = cursor.inFile(token.letterSpan(cursor.line()));
    // Of a variation only the sheet's part of its name is the writer's own.
    return References.references(compiled, offset, library).stream()
        .filter(place -> place.compiled().file().equals(compiled.file()))
        .map(Place::span)
        .filter(span -> span.start() == whole.start())
        .findFirst()
        .or(() -> Optional.of(whole));
  }

  /**
   * The places to write a new name at.
   *
   * @throws BadName if the name is not one, or is taken; the message says why
   */
  public static List<Place> places(Compiled compiled, int offset, String to, Library library) {
    Cursor cursor = Cursor.at(compiled, offset);
    List<Place> places = References.references(compiled, offset, library);
    if (cursor.token() == null || places.stream().noneMatch(Place::given)) {
      throw new BadName("there is no name of yours here to change");
    }
    SyntaxToken token = cursor.token();
    // A single letter is no word that a reader would stumble over.
    if (to.length() > 1 && Vocabulary.keywords().contains(to)) {
      throw new BadName("“" + to + "” is a word of the notation: choose a name of your own");
    }
    Optional<NameKind> kind = NameKind.of(token.role());
    if (kind.isEmpty()) {
      KitReferences.check(cursor, to, library);
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
          case SECTION, PLAYER -> false;
          case PATTERN -> Rudiments.named(to).isPresent() || Timelines.named(to).isPresent();
          case KIT -> Kits.NAMES.contains(to);
        };
    boolean taken =
        byFile(places).stream()
            .anyMatch(file -> Definitions.find(file, library, kind.get(), to).isPresent());
    if (builtIn || (taken && !to.equals(token.text()))) {
      throw new BadName("There is a " + kind.get().word() + " named " + to + " already");
    }
    return places;
  }

  /** The files of places, each once; comparing what was made of them would walk all of it. */
  private static List<Compiled> byFile(List<Place> places) {
    Map<Path, Compiled> found = new LinkedHashMap<>();
    places.forEach(place -> found.put(place.compiled().file(), place.compiled()));
    return List.copyOf(found.values());
  }
}
