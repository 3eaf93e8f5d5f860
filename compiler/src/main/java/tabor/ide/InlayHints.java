package tabor.ide;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import tabor.compile.Compiled;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.resolve.PlaceQuery;
import tabor.resolve.SectionView;
import tabor.source.Span;
import tabor.source.Spot;
import tabor.syntax.At;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.SectionSyntax;

/** Small notes at the ends of lines: what Tabor chose, found and counted. */
public final class InlayHints {
  private static final int MOST_LETTERS = 16;

  private InlayHints() {}

  /** Kinds of note, each of which a person can turn on. */
  public enum Kind {
    /**
     * The hands or feet that Tabor chose for the open strokes of a line: {@code RLRL from Tabor}.
     */
    HANDS,
    /** The bars that a part writes, where it does not begin with the first: {@code bars 3 to 4}. */
    BARS,
    /** Where the strokes are that {@code every &} adds or means: {@code at 1& 2& 3& 4&}. */
    COUNTS
  }

  /**
   * A note.
   *
   * @param offset where in the file: behind the line's statement
   * @param text what it says
   * @param kind what it is about
   */
  public record Hint(int offset, String text, Kind kind) {}

  /** The notes of these kinds on the lines that end in a range of the file, in order. */
  public static List<Hint> in(Compiled compiled, Span range, Set<Kind> kinds) {
    List<Hint> found = new ArrayList<>();
    for (SectionSyntax section : compiled.syntax()) {
      int start = Cursor.startOf(compiled, section);
      if (start + section.passage().text().length() < range.start() || start > range.end()) {
        continue;
      }
      Groove groove = Cursor.grooveOf(compiled, section.passage()).orElse(null);
      if (groove == null) {
        continue;
      }
      Map<Line, List<Stroke>> made = made(groove, section);
      for (Line line : section.lines()) {
        int end = compiled.span(line.spot()).end();
        if (range.touches(end)) {
          List<Stroke> strokes = made.getOrDefault(line, List.of());
          bars(section, line, groove).ifPresent(text -> found.add(new Hint(end, text, Kind.BARS)));
          counts(line, groove, strokes)
              .ifPresent(text -> found.add(new Hint(end, text, Kind.COUNTS)));
          limbs(strokes).ifPresent(text -> found.add(new Hint(end, text, Kind.HANDS)));
        }
      }
    }
    found.removeIf(hint -> !kinds.contains(hint.kind()));
    return found;
  }

  /** The strokes that each line of a section made, in order of time. */
  private static Map<Line, List<Stroke>> made(Groove groove, SectionSyntax section) {
    List<Line> lines = section.lines();
    Map<Line, List<Stroke>> found = new LinkedHashMap<>();
    for (Stroke stroke : groove.written()) {
      Spot spot = stroke.spot();
      if (spot.passage() == section.passage()) {
        int low = 0;
        int high = lines.size() - 1;
        while (low < high) {
          int middle = (low + high + 1) >>> 1;
          if (lines.get(middle).start() <= spot.span().start()) {
            low = middle;
          } else {
            high = middle - 1;
          }
        }
        found.computeIfAbsent(lines.get(low), line -> new ArrayList<>()).add(stroke);
      }
    }
    found.values().forEach(strokes -> strokes.sort(Stroke.ORDER));
    return found;
  }

  private static Optional<String> bars(SectionSyntax section, Line line, Groove groove) {
    if (!(line.statement() instanceof PartStatement.Lane lane) || lane.ostinato()) {
      return Optional.empty();
    }
    int first = NamedBars.first(section, line, groove);
    int last = first + lane.bars().size() - 1;
    return first == groove.firstBar()
        ? Optional.empty()
        : Optional.of(first == last ? "bar " + first : "bars " + first + " to " + last);
  }

  /**
   * The limbs of a line's strokes, the first bar's where all bars are alike. A pedal under one foot
   * is no news.
   */
  private static Optional<String> limbs(List<Stroke> strokes) {
    if (strokes.stream().noneMatch(Stroke::dealt)
        || (!strokes.get(0).limb().isHand()
            && strokes.stream().map(Stroke::limb).distinct().count() == 1)) {
      return Optional.empty();
    }
    Map<Integer, String> bars = new LinkedHashMap<>();
    for (Stroke stroke : strokes) {
      bars.merge(stroke.bar(), stroke.limb().letter(), String::concat);
    }
    List<String> different = bars.values().stream().distinct().toList();
    String letters = different.size() == 1 ? different.get(0) : String.join(" ", bars.values());
    String shown =
        letters.length() <= MOST_LETTERS ? letters : letters.substring(0, MOST_LETTERS) + "…";
    return Optional.of(shown.toUpperCase(Locale.ROOT) + " from Tabor");
  }

  /** What {@code every &} adds, or means among the strokes that are there. */
  private static Optional<String> counts(Line line, Groove groove, List<Stroke> made) {
    At at = SyntaxNodes.first(line.statement(), At.class).orElse(null);
    boolean every =
        SyntaxNodes.all(line.statement(), At.Places.class).stream()
            .flatMap(places -> places.items().stream())
            .anyMatch(place -> !(place instanceof At.One || place instanceof At.Range));
    if (!every) {
      return Optional.empty();
    }
    List<Stroke> strokes = made;
    if (strokes.isEmpty() && at != null) {
      Predicate<Stroke> target = EditTargets.of(line.statement(), groove.setting().kit());
      Span whole = line.statement().span();
      strokes = new PlaceQuery(SectionView.of(groove), target).find(at, whole).strokes();
    }
    String counts =
        strokes.stream()
            .sorted(Comparator.comparing(Stroke::at))
            .map(stroke -> BarCounts.of(groove, stroke).toString())
            .distinct()
            .collect(Collectors.joining(" "));
    return counts.isEmpty() ? Optional.empty() : Optional.of("at " + counts);
  }
}
