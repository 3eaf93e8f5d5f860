package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;
import tabor.ide.Leaf.Role;
import tabor.rhythm.Count;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.Edit;
import tabor.syntax.Line;

/** Mends of places that are not there or have no stroke. */
final class CountRemedies {
  private final Cursor cursor;
  private final Span span;
  private final Library library;
  private final List<Mend> found = new ArrayList<>();

  private CountRemedies(Cursor cursor, Span span, Library library) {
    this.cursor = cursor;
    this.span = span;
    this.library = library;
  }

  static List<Mend> of(Cursor cursor, Diagnostic diagnostic, Span span, Library library) {
    CountRemedies remedies = new CountRemedies(cursor, span, library);
    if (diagnostic.code() == Code.NOTHING_THERE) {
      remedies.nothingThere();
    } else {
      remedies.outsideTheBar();
    }
    return remedies.found;
  }

  private void add(String title, Span where, String text) {
    found.add(Mend.of(title, where, text));
  }

  /**
   * A sign that has nothing to stand for, or a count without a stroke: the places that have one.
   */
  private void nothingThere() {
    Leaf leaf = cursor.leaf();
    String written = span.in(cursor.compiled().text());
    if (written.equals("-")) {
      add("write a rest", span, ".");
    } else if (written.equals("%")) {
      int beats = Situation.at(cursor.compiled(), span.start(), library).meter().beatCount();
      add("write silence", span, ". ".repeat(beats).strip());
    } else if (leaf != null && leaf.role() == Role.COUNT && cursor.line() != null) {
      Situation situation = Situation.at(cursor.compiled(), span.start(), library);
      situation.above().ifPresent(groove -> nearCounts(groove, leaf));
    }
  }

  private void nearCounts(Groove groove, Leaf leaf) {
    List<String> targets = targets(cursor.line());
    TreeMap<Time, String> places = new TreeMap<>();
    BarCounts.struck(groove, stroke -> Targets.matches(stroke, targets))
        .forEach((count, strokes) -> places.putIfAbsent(strokes.get(0).at(), count));
    Time wanted = at(groove, leaf.count());
    if (wanted == null) {
      return;
    }
    Map.Entry<Time, String> before = places.lowerEntry(wanted);
    Map.Entry<Time, String> after = places.higherEntry(wanted);
    Span where = cursor.inFile(leaf.span());
    if (after != null) {
      add("write " + after.getValue(), where, after.getValue());
    }
    if (before != null) {
      add("write " + before.getValue(), where, before.getValue());
    }
  }

  private static @Nullable Time at(Groove groove, @Nullable Count count) {
    if (count == null || count.beat() > groove.meter().beatCount()) {
      return null;
    }
    return groove
        .meter()
        .beatStart(count.beat() - 1)
        .plus(groove.meter().beat(count.beat() - 1).times(count.syllable().ordinal()).over(4));
  }

  private static List<String> targets(@Nullable Line line) {
    return line == null
        ? List.of()
        : Leaves.of(line).stream()
            .filter(leaf -> leaf.role() == Role.LIMB || leaf.role() == Role.SURFACE)
            .map(Leaf::text)
            .toList();
  }

  /** A count or a bar that is not there: the nearest that is. */
  private void outsideTheBar() {
    Leaf leaf = cursor.leaf();
    if (leaf == null) {
      return;
    }
    Situation situation = Situation.at(cursor.compiled(), span.start(), library);
    Span where = cursor.inFile(leaf.span());
    if (leaf.role() == Role.COUNT && leaf.count() != null) {
      int last = situation.meter().beatCount();
      int beat = Math.max(1, Math.min(last, leaf.count().beat()));
      // A change needs a stroke to act on: the last place that has one comes before a bare beat.
      boolean adds = cursor.line() != null && cursor.line().statement() instanceof Edit.Add;
      if (!adds && situation.above().isPresent()) {
        List<String> targets = targets(cursor.line());
        List<String> counts =
            List.copyOf(
                BarCounts.struck(
                        situation.above().get(), stroke -> Targets.matches(stroke, targets))
                    .keySet());
        if (!counts.isEmpty()) {
          String count = counts.get(counts.size() - 1);
          add("write " + count, where, count);
        }
      }
      add("write " + beat, where, Integer.toString(beat));
    } else if (leaf.role() == Role.NUMBER && situation.above().isPresent()) {
      int bars = situation.above().get().bars();
      add("write " + bars, where, Integer.toString(bars));
    }
  }
}
