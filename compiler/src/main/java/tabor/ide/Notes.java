package tabor.ide;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import tabor.compile.Compiled;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.rhythm.Count;
import tabor.rhythm.Count.Syllable;
import tabor.rhythm.CountNames;
import tabor.source.Span;
import tabor.source.Spot;
import tabor.syntax.At;
import tabor.syntax.Bar;
import tabor.syntax.Edit;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.SectionSyntax;

/** Small notes in and above the text: what the compiler chose, counted or found. */
public final class Notes {
  private Notes() {}

  /**
   * A note in a line.
   *
   * @param offset where in the file
   * @param text what it says
   * @param before true if it belongs to what follows
   * @param kind what it tells
   */
  public record Hint(int offset, String text, boolean before, Kind kind) {}

  /** What a note in a line tells. */
  public enum Kind {
    /** The hands that were chosen for open strokes. */
    HANDS,
    /** The numbers of bars. */
    BARS,
    /** The counts that {@code every} meant. */
    COUNTS
  }

  /**
   * A note above a section.
   *
   * @param heading the section's heading in the file
   * @param section its name
   * @param kind what the section is
   */
  public record Lens(Span heading, String section, LensKind kind) {}

  /** What a section under a note is. */
  public enum LensKind {
    GROOVE,
    STEP,
    CHART
  }

  /** The notes above the sections that can be built and played. */
  public static List<Lens> lenses(Compiled compiled) {
    List<Lens> found = new ArrayList<>();
    for (tabor.groove.Section section : compiled.lesson().sections()) {
      if (compiled.file().equals(compiled.fileOf(section.heading()))) {
        LensKind kind =
            !(section instanceof Groove groove)
                ? LensKind.CHART
                : groove.isStep() ? LensKind.STEP : LensKind.GROOVE;
        found.add(new Lens(compiled.span(section.heading()), section.name(), kind));
      }
    }
    return found;
  }

  /** The notes in the lines of a range of the file. */
  public static List<Hint> hints(Compiled compiled, Span range, Library library) {
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
      Map<Spot, List<Stroke>> bySpot = bySpot(groove, section);
      int firstBar = groove.firstBar();
      int widest = 0;
      for (Line line : section.lines()) {
        if (line.statement() instanceof PartStatement.Next) {
          firstBar += widest;
          widest = 0;
        } else if (line.statement() instanceof PartStatement.Lane lane) {
          if (!lane.ostinato()) {
            widest = Math.max(widest, lane.bars().size());
            bars(compiled, line, lane, firstBar, found);
          }
          hands(compiled, line, bySpot, found);
        } else if (line.statement() instanceof Edit edit
            && range.touches(compiled.span(line.spot()).start())) {
          every(compiled, line, edit, library, groove, found);
          hands(compiled, line, bySpot, found);
        }
      }
    }
    found.removeIf(hint -> !range.touches(hint.offset()));
    found.sort(Comparator.comparingInt(Hint::offset));
    return found;
  }

  private static Map<Spot, List<Stroke>> bySpot(Groove groove, SectionSyntax section) {
    Map<Spot, List<Stroke>> found = new LinkedHashMap<>();
    for (Stroke stroke : groove.written()) {
      if (stroke.spot().passage() == section.passage()) {
        found.computeIfAbsent(stroke.spot(), spot -> new ArrayList<>()).add(stroke);
      }
    }
    return found;
  }

  /** The number of each bar of a part that has more than one. */
  private static void bars(
      Compiled compiled, Line line, PartStatement.Lane lane, int first, List<Hint> found) {
    if (lane.bars().size() < 2 && first == 1) {
      return;
    }
    int number = first;
    for (Bar bar : lane.bars()) {
      int at = compiled.span(line.spot(bar.span())).start();
      found.add(new Hint(at, number + ":", true, Kind.BARS));
      number++;
    }
  }

  /** The hands that the compiler chose for open strokes: behind a word, or behind an edit. */
  private static void hands(
      Compiled compiled, Line line, Map<Spot, List<Stroke>> bySpot, List<Hint> found) {
    Span whole = line.spot().span();
    if (line.statement() instanceof PartStatement.Lane lane) {
      for (Bar bar : lane.bars()) {
        for (tabor.syntax.Beat beat : bar.beats()) {
          note(compiled, line.spot(beat.span()), bySpot, found);
        }
      }
    } else {
      note(compiled, new Spot(line.passage(), whole), bySpot, found);
    }
  }

  private static void note(
      Compiled compiled, Spot word, Map<Spot, List<Stroke>> bySpot, List<Hint> found) {
    Map<Integer, String> letters = new TreeMap<>();
    boolean dealt = false;
    for (Map.Entry<Spot, List<Stroke>> entry : bySpot.entrySet()) {
      Span span = entry.getKey().span();
      if (span.start() >= word.span().start() && span.end() <= word.span().end()) {
        StringBuilder who = new StringBuilder();
        for (Stroke stroke : entry.getValue()) {
          dealt |= stroke.dealt();
          String letter = stroke.limb().letter().toLowerCase(java.util.Locale.ROOT);
          if (who.length() < 8 && (who.length() == 0 || entry.getValue().size() > 1)) {
            who.append(letter);
          }
        }
        letters.merge(span.start(), who.toString(), (a, b) -> a.equals(b) ? a : a + b);
      }
    }
    if (dealt) {
      int end = compiled.span(word).end();
      found.add(new Hint(end, String.join("", letters.values()), false, Kind.HANDS));
    }
  }

  /** What {@code every &} hit: strokes added by the line, or strokes above it that it meant. */
  private static void every(
      Compiled compiled, Line line, Edit edit, Library library, Groove groove, List<Hint> found) {
    At at = edit.match(new Places());
    if (at.places() == null) {
      return;
    }
    Set<Syllable> syllables = EnumSet.noneOf(Syllable.class);
    for (At.Place place : at.places().items()) {
      if (place instanceof At.Every every) {
        syllables.add(every.syllable());
      }
    }
    if (syllables.isEmpty()) {
      return;
    }
    Span whole = compiled.span(line.spot());
    Set<String> counts = new LinkedHashSet<>();
    for (Stroke stroke : meant(compiled, line, edit, library, groove)) {
      Count count = CountNames.of(stroke.slot(), groove.meter());
      if (syllables.contains(count.syllable()) && count.places().isEmpty()) {
        counts.add(count.toString());
      }
    }
    if (!counts.isEmpty()) {
      int end = whole.start() + at.places().span().end() - line.statement().span().start();
      found.add(new Hint(end, "= " + String.join(" ", counts), false, Kind.COUNTS));
    }
  }

  private static List<Stroke> meant(
      Compiled compiled, Line line, Edit edit, Library library, Groove groove) {
    if (edit instanceof Edit.Add) {
      return groove.written().stream()
          .filter(stroke -> stroke.spot().passage() == line.passage())
          .filter(stroke -> within(stroke.spot().span(), line.spot().span()))
          .sorted(Comparator.comparing(Stroke::at))
          .toList();
    }
    List<String> targets =
        Leaves.of(line).stream()
            .filter(leaf -> leaf.role() == Leaf.Role.LIMB || leaf.role() == Leaf.Role.SURFACE)
            .map(Leaf::text)
            .toList();
    int start = compiled.span(line.spot()).start();
    return Situation.at(compiled, start, library)
        .above()
        .map(
            above ->
                above.written().stream()
                    .filter(stroke -> Targets.matches(stroke, targets))
                    .sorted(Comparator.comparing(Stroke::at))
                    .toList())
        .orElse(List.of());
  }

  private static boolean within(Span inner, Span outer) {
    return outer.start() <= inner.start() && inner.end() <= outer.end();
  }
}
