package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.pattern.PatternPlace;
import tabor.pattern.Rudiments;
import tabor.pattern.Timelines;
import tabor.rhythm.Meters;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.Beat;
import tabor.syntax.PartStatement;

/** Finds what is played: rudiments, timelines, spread strokes and the file's own patterns. */
record Patterns(Scope scope) {
  private static final int MOST_PLACES = 512;

  /** Most bars that a played pattern may need. */
  static final int MOST_BARS = 32;

  /** The places of what a line plays, mirrored if it says so; null if there is no such pattern. */
  @Nullable List<Beat.Element> of(PartStatement.Played played) {
    List<Beat.Element> places = unmirrored(played.pattern());
    return places == null
        ? null
        : new Rewriter(played.leftLead(), played.pattern().span()).each(places);
  }

  private @Nullable List<Beat.Element> unmirrored(PartStatement.PatternSource source) {
    if (source instanceof PartStatement.Spread spread) {
      int strokes = spread.strokes().whole();
      int places = spread.places().whole();
      return strokes < 1 || places < strokes || places > MOST_PLACES
          ? List.of()
          : elements(Timelines.spread(strokes, places));
    }
    String name = ((PartStatement.Named) source).name().text();
    Optional<List<PatternPlace>> builtIn =
        Rudiments.named(name).map(Rudiments.Rudiment::places).or(() -> Timelines.named(name));
    return builtIn.isPresent() ? elements(builtIn.get()) : scope.pattern(name);
  }

  /** What is played, as a message names it. */
  static String words(PartStatement.PatternSource source) {
    return source instanceof PartStatement.Spread spread
        ? "spread " + spread.strokes().whole() + " over " + spread.places().whole()
        : ((PartStatement.Named) source).name().text();
  }

  /**
   * How many bars a line's pattern needs to end on a bar line; 0 if there is no such pattern or it
   * is empty.
   */
  long bars(PartStatement.Played played, Meters meters) {
    List<Beat.Element> places = unmirrored(played.pattern());
    Time length = played.value().value().length().times(places == null ? 0 : count(places));
    return length.over(meters.cycleLength()).num() * meters.size();
  }

  private static int count(List<Beat.Element> places) {
    int count = 0;
    for (Beat.Element place : places) {
      count += place instanceof Beat.Ghosts ghosts ? count(ghosts.elements()) : 1;
    }
    return count;
  }

  private static List<Beat.Element> elements(List<PatternPlace> places) {
    Span nowhere = new Span(0, 0);
    List<Beat.Element> elements = new ArrayList<>(places.size());
    for (PatternPlace place : places) {
      if (place.letter() == '.') {
        elements.add(new Beat.Rest(nowhere));
      } else {
        List<Beat.Suffix> suffixes =
            place.diddle()
                ? List.of(Beat.Suffix.DIDDLE)
                : place.buzz() ? List.of(Beat.Suffix.BUZZ) : List.of();
        elements.add(
            new Beat.Hit(place.letter(), place.accent(), place.graceNotes(), suffixes, nowhere));
      }
    }
    return elements;
  }

  /** Writes places where the pattern is played, with the hands exchanged if asked for. */
  private record Rewriter(boolean mirror, Span span) implements Beat.Cases<Beat.Element> {
    List<Beat.Element> each(List<Beat.Element> elements) {
      List<Beat.Element> all = new ArrayList<>(elements.size());
      elements.forEach(element -> all.add(element.match(this)));
      return all;
    }

    @Override
    public Beat.Element hit(Beat.Hit hit) {
      char letter = hit.letter();
      char other = letter == 'r' ? 'l' : letter == 'l' ? 'r' : letter;
      return new Beat.Hit(mirror ? other : letter, hit.accent(), hit.grace(), hit.suffixes(), span);
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
      return new Beat.Group(each(group.elements()), span);
    }

    @Override
    public Beat.Element ghosts(Beat.Ghosts ghosts) {
      return new Beat.Ghosts(each(ghosts.elements()), span);
    }
  }
}
