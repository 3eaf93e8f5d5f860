package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.pattern.Place;
import tabor.pattern.Rudiments;
import tabor.pattern.Timelines;
import tabor.source.Span;
import tabor.syntax.Beat;
import tabor.syntax.Num;
import tabor.syntax.PartStatement;

/** Finds patterns by name: rudiments, timelines, Euclidean ones and the file's own. */
final class Patterns {
  private static final int MOST_PLACES = 512;

  private final Scope scope;

  Patterns(Scope scope) {
    this.scope = scope;
  }

  /** True if the name belongs to a built-in pattern. */
  static boolean isBuiltIn(String name) {
    return name.equals("euclid")
        || Rudiments.named(name).isPresent()
        || Timelines.named(name).isPresent();
  }

  /** The places of what a line plays, mirrored if it says so; null if there is no such pattern. */
  @Nullable List<Beat.Element> of(PartStatement.Played played) {
    List<Beat.Element> places = unmirrored(played);
    return places == null ? null : here(places, played.leftLead(), played.pattern().span());
  }

  private @Nullable List<Beat.Element> unmirrored(PartStatement.Played played) {
    String name = played.pattern().text();
    Num k = played.strokes();
    Num n = played.places();
    if (k != null && n != null) {
      int strokes = k.whole();
      int places = n.whole();
      return strokes < 1 || places < strokes || places > MOST_PLACES
          ? List.of()
          : elements(Timelines.euclid(strokes, places));
    }
    Optional<List<Place>> builtIn =
        Rudiments.named(name).map(Rudiments.Rudiment::places).or(() -> Timelines.named(name));
    return builtIn.isPresent() ? elements(builtIn.get()) : scope.pattern(name);
  }

  /** How many places a line's pattern has; 0 if there is no such pattern or it is empty. */
  int length(PartStatement.Played played) {
    List<Beat.Element> places = unmirrored(played);
    return places == null ? 0 : count(places);
  }

  private static int count(List<Beat.Element> places) {
    int count = 0;
    for (Beat.Element place : places) {
      count += place instanceof Beat.Ghosts ghosts ? count(ghosts.elements()) : 1;
    }
    return count;
  }

  private static List<Beat.Element> elements(List<Place> places) {
    Span nowhere = new Span(0, 0);
    List<Beat.Element> elements = new ArrayList<>(places.size());
    for (Place place : places) {
      if (place.letter() == '.') {
        elements.add(new Beat.Rest(nowhere));
      } else {
        List<Beat.Suffix> suffixes =
            place.diddle()
                ? List.of(Beat.Suffix.DIDDLE)
                : place.buzz() ? List.of(Beat.Suffix.BUZZ) : List.of();
        elements.add(
            new Beat.Hit(place.letter(), place.accent(), place.small(), suffixes, nowhere));
      }
    }
    return elements;
  }

  /** The same places, written where the pattern is played. */
  private static List<Beat.Element> here(List<Beat.Element> elements, boolean mirror, Span span) {
    List<Beat.Element> all = new ArrayList<>(elements.size());
    for (Beat.Element element : elements) {
      all.add(
          element.match(
              new Beat.Cases<Beat.Element>() {
                @Override
                public Beat.Element hit(Beat.Hit hit) {
                  char letter = mirror ? mirrored(hit.letter()) : hit.letter();
                  return new Beat.Hit(letter, hit.accent(), hit.small(), hit.suffixes(), span);
                }

                @Override
                public Beat.Element rest(Beat.Rest rest) {
                  return new Beat.Rest(span);
                }

                @Override
                public Beat.Element hold(Beat.Hold hold) {
                  return new Beat.Hold(span);
                }

                @Override
                public Beat.Element group(Beat.Group group) {
                  return new Beat.Group(here(group.elements(), mirror, span), span);
                }

                @Override
                public Beat.Element ghosts(Beat.Ghosts ghosts) {
                  return new Beat.Ghosts(here(ghosts.elements(), mirror, span), span);
                }
              }));
    }
    return all;
  }

  private static char mirrored(char letter) {
    return letter == 'r' ? 'l' : letter == 'l' ? 'r' : letter;
  }
}
