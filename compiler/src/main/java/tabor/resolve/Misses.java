package tabor.resolve;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Near;
import tabor.groove.Level;
import tabor.groove.Stroke;
import tabor.rhythm.Count;
import tabor.rhythm.CountNames;
import tabor.source.Span;
import tabor.syntax.At;
import tabor.syntax.CountWord;
import tabor.syntax.Line;
import tabor.syntax.Word;

/** Says what an edit speaks of that is not there, or not plainly, and offers what is. */
final class Misses {
  private final Work work;
  private final Line line;
  private final CountReader reader;
  private final List<Stroke> strokes;

  /** Misses of a line among these strokes. */
  Misses(Work work, Line line, CountReader reader, List<Stroke> strokes) {
    this.work = work;
    this.line = line;
    this.reader = reader;
    this.strokes = strokes;
  }

  /** Says that a word names no surface or limb. */
  void unknownTarget(Word word) {
    List<String> names = new ArrayList<>(work.kit().surfaceNames());
    names.addAll(List.of("hands", "feet", "all", "right", "left", "right foot", "left foot"));
    work.partial = true;
    work.problems.unknown(line, word, "surface or limb", Near.find(word.text(), names));
  }

  /** Says that a bar is not in the section. */
  void noSuchBar(Span span) {
    work.problems.add(
        work.problems
            .make(
                Code.COUNT_OUTSIDE_BAR,
                line,
                span,
                "“" + work.name + "” has only " + Plan.bars(work.bars))
            .help("name a bar from " + work.firstBar() + " to " + work.bars));
  }

  /** Says that a count may mean several places, and offers each with its division named. */
  void ambiguous(CountWord word, int bar, List<CountReader.Reading> readings) {
    Count count = word.count();
    List<String> named = new ArrayList<>();
    for (CountReader.Reading reading : readings) {
      named.add(
          new Count(
                  count.beat(), count.syllable(), count.places(), reading.slot().division().slots())
              .toString());
    }
    Diagnostic made =
        work.problems
            .make(
                Code.AMBIGUOUS_COUNT,
                line.spot(word.span()),
                bar,
                count.toString(),
                count + " can be read in two ways here, as " + String.join(" and as ", named))
            .help("name the division: " + String.join(" or ", named));
    for (String text : named) {
      made = made.fix(Diagnostic.Fix.of("write " + text, line.spot(word.span()), text));
    }
    work.problems.add(made);
  }

  /** Says that a place does not exist in a bar. */
  void outsideBar(At.Place place, int bar) {
    Count count =
        place instanceof At.One one
            ? one.count().count()
            : place instanceof At.Range range ? outsideOf(range, bar) : null;
    outsideBar(place.span(), count, bar);
  }

  private Count outsideOf(At.Range range, int bar) {
    return reader.beatExists(range.from().count(), bar) ? range.to().count() : range.from().count();
  }

  /** Says that a count does not exist in a bar. */
  void outsideBar(Span span, @Nullable Count count, int bar) {
    if (work.partial && count != null && reader.beatExists(count, bar)) {
      return;
    }
    int beats = work.grid.beats();
    String message;
    if (count == null) {
      message = "no beat of these bars has this syllable";
    } else if (!reader.beatExists(count, bar)) {
      message =
          bar == 0
              ? "the pickup has no beat " + count.beat()
              : "there is no beat "
                  + count.beat()
                  + " in "
                  + work.meter()
                  + ": the beats are 1 to "
                  + beats;
    } else {
      message = "beat " + count.beat() + " has no place " + count + " here";
    }
    work.problems.add(
        work.problems
            .make(
                Code.COUNT_OUTSIDE_BAR,
                line.spot(span),
                bar,
                count == null ? null : count.toString(),
                message)
            .help("name a place that the bar has, such as " + (work.firstBeat(bar) + 1) + "&"));
  }

  /**
   * Says that no stroke of the target is there, and where the nearest ones are.
   *
   * @param span what is underlined
   * @param count the count asked for; null if a whole bar was
   * @param what the words of the target
   * @param level the only level asked for; null for every level
   */
  void nothing(
      Span span,
      @Nullable String count,
      Predicate<Stroke> target,
      int bar,
      Span what,
      @Nullable Level level) {
    if (work.partial) {
      return;
    }
    String who = line.spot(what).text();
    String kind =
        level == null
            ? "stroke"
            : switch (level) {
              case GHOST -> "ghost stroke";
              case PLAIN -> "plain stroke";
              case ACCENT -> "accent";
            };
    String message =
        count == null
            ? "there is no " + kind + " of “" + who + "” here"
            : "there is no stroke of “" + who + "” at " + count;
    work.problems.add(
        work.problems
            .make(Code.NOTHING_THERE, line.spot(span), bar, count, message)
            .help(nearest(target, bar, count)));
  }

  private @Nullable String nearest(Predicate<Stroke> target, int bar, @Nullable String count) {
    Set<String> names = new LinkedHashSet<>();
    for (Stroke stroke : strokes) {
      if (stroke.bar() == bar && target.test(stroke)) {
        names.add(CountNames.of(stroke.slot(), work.meter()).toString());
      }
    }
    if (names.isEmpty()) {
      Set<Integer> bars = new TreeSet<>();
      for (Stroke stroke : strokes) {
        if (target.test(stroke)) {
          bars.add(stroke.bar());
        }
      }
      if (bars.isEmpty()) {
        return "nothing above this line plays it";
      }
      return "it is played in "
          + (bars.size() == 1 ? "bar " : "bars ")
          + String.join(" ", bars.stream().limit(8).map(String::valueOf).toList());
    }
    List<String> all = new ArrayList<>(names);
    if (count != null && all.size() > 6) {
      int beat = beatOf(count);
      List<String> nearest = new ArrayList<>(all);
      nearest.sort(Comparator.comparingInt(n -> Math.abs(beatOf(n) - beat)));
      all.retainAll(nearest.subList(0, 6));
    }
    return "in bar " + bar + " it is played at " + String.join(" ", all);
  }

  private static int beatOf(String name) {
    int beat = 0;
    for (int i = 0; i < name.length() && Character.isDigit(name.charAt(i)); i++) {
      beat = beat * 10 + name.charAt(i) - '0';
    }
    return beat;
  }
}
