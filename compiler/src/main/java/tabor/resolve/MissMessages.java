package tabor.resolve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Near;
import tabor.groove.Level;
import tabor.groove.Stroke;
import tabor.rhythm.Count;
import tabor.rhythm.CountNames;
import tabor.rhythm.Meter;
import tabor.rhythm.NoteValue;
import tabor.source.Span;
import tabor.source.Spot;
import tabor.syntax.At;
import tabor.syntax.CountRef;

/**
 * Says what an edit speaks of that is not there, or not plainly, and offers what is.
 *
 * @param view where the line looked
 * @param words the target as written
 * @param filters the targets one by one; none where anything may be meant
 */
record MissMessages(
    LineContext context,
    SectionView view,
    Predicate<Stroke> target,
    String words,
    List<TargetFilter> filters) {
  private static final int MOST_NAMED = 6;
  private static final int MOST_FIXES = 3;

  void say(Miss miss) {
    if (miss instanceof Miss.NoBar noBar) {
      noSuchBar(noBar.span());
    } else if (miss instanceof Miss.Ambiguous ambiguous) {
      ambiguous(ambiguous);
    } else if (miss instanceof Miss.Unsaid unsaid) {
      unsaid(unsaid);
    } else if (miss instanceof Miss.UnsaidEvery unsaid) {
      unsaid(unsaid.place());
    } else if (miss instanceof Miss.Outside outside) {
      outside(outside);
    } else if (miss instanceof Miss.Nothing nothing) {
      nothing(nothing);
    }
  }

  private Diagnostic make(Code code, Span span, int bar, @Nullable Count count, String message) {
    return context
        .problems()
        .make(
            code, context.line().spot(span), bar, count == null ? null : count.toString(), message);
  }

  private void noSuchBar(Span span) {
    context.tell(
        Code.COUNT_OUTSIDE_BAR,
        span,
        "“" + context.frame().name() + "” has only " + SectionLength.bars(view.bars()),
        "name a bar from " + view.firstBar() + " to " + view.bars());
  }

  private void ambiguous(Miss.Ambiguous miss) {
    CountRef count = miss.count();
    List<String> named = new ArrayList<>();
    for (CountReading reading : miss.readings()) {
      named.add(named(count, reading, miss.bar()).toString());
    }
    Diagnostic made =
        make(
                Code.AMBIGUOUS_COUNT,
                miss.span(),
                miss.bar(),
                count.word() == null ? count.count() : null,
                count.words()
                    + " can be read in two ways here, as "
                    + String.join(" and as ", named))
            .help(
                (miss.single()
                        ? "name the division: "
                        : "write out the counts with their division: ")
                    + String.join(" or ", named));
    Spot spot = context.line().spot(miss.span());
    for (String text : miss.single() ? named : List.<String>of()) {
      made = made.fix("write " + text, spot, text);
    }
    context.problems().add(made);
  }

  /** The count of a reading with its division named. */
  private Count named(CountRef count, CountReading reading, int bar) {
    Count own =
        count.word() == null ? count.count() : CountNames.of(reading.slot(), view.meters().of(bar));
    return new Count(own.beat(), own.syllable(), own.places(), reading.slot().division().slots());
  }

  /** A word that nobody has said: what it may have been meant to be. */
  private void unsaid(Miss.Unsaid miss) {
    context.problems().incomplete();
    CountRef count = miss.count();
    String word = java.util.Objects.requireNonNull(count.word());
    Set<String> said = view.words().all();
    List<String> fixes = new ArrayList<>(Near.names(word, said));
    if (fixes.isEmpty() && word.matches("and|und|et|y|n")) {
      fixes.add("&");
    }
    String near =
        fixes.isEmpty()
            ? ""
            : "did you mean " + count.count().beat() + String.join(" or ", fixes) + "? ";
    String help =
        said.isEmpty()
            ? "a count is a beat with a syllable, such as 1, 2&, 3e or 4a; other words are said in"
                + " the header first: say threes trip let"
            : "this lesson is counted with " + String.join(" ", said) + " besides e & a";
    Diagnostic made =
        make(
                Code.SYNTAX,
                miss.span(),
                miss.bar(),
                null,
                "`"
                    + count.words()
                    + (said.isEmpty()
                        ? "` is neither a number nor a count"
                        : "` has a word that this lesson is not counted with"))
            .help(near + help);
    Spot spot = context.line().spot(miss.span());
    for (String instead : fixes) {
      String text = new CountRef(count.count(), instead, count.span()).words();
      made = made.fix("write " + text, spot, text);
    }
    context.problems().add(made);
  }

  /** A word after {@code every} that nobody has said. */
  private void unsaid(At.EverySaid place) {
    context.problems().incomplete();
    Set<String> said = view.words().all();
    List<String> known = new ArrayList<>(said);
    known.add("beat");
    Arrays.stream(NoteValue.values()).map(NoteValue::singular).forEach(known::add);
    // What a drummer calls them is near the name of another value.
    List<String> near =
        place.word().equals("sextuplet")
            ? List.of(NoteValue.SIXTEENTH_TRIPLETS.singular())
            : Near.names(place.word(), known);
    Diagnostic made =
        context
            .make(
                Code.SYNTAX,
                place.span(),
                "`every " + place.word() + "` has a word that this lesson is not counted with")
            .help(
                (near.isEmpty()
                        ? ""
                        : "did you mean every " + String.join(" or every ", near) + "? ")
                    + "after every stands beat, &, e or a, a slot such as .3, a note value such as"
                    + " sixteenth, or "
                    + (said.isEmpty()
                        ? "a word that the header says: say threes trip let"
                        : "a word of this lesson: " + String.join(" ", said)));
    for (String instead : near) {
      String text = "every " + instead;
      made = made.fix("write " + text, context.line().spot(place.span()), text);
    }
    context.problems().add(made);
  }

  private void outside(Miss.Outside miss) {
    Count count = miss.count();
    int bar = miss.bar();
    boolean beat = count != null && new CountReader(view, bar, target).beatExists(count);
    if (context.problems().isIncomplete() && beat) {
      return;
    }
    Meter meter = view.meters().of(bar);
    String message;
    if (count == null) {
      message = "no beat of these bars has such a place";
    } else if (beat) {
      message = "beat " + count.beat() + " has no place " + count + " here";
    } else if (bar == 0) {
      message = "the pickup has no beat " + count.beat();
    } else {
      message =
          "there is no beat "
              + count.beat()
              + " in "
              + meter
              + ": the beats are 1 to "
              + meter.beatCount();
    }
    context
        .problems()
        .tell(
            Code.COUNT_OUTSIDE_BAR,
            context.line().spot(miss.span()),
            bar,
            count == null ? null : count.toString(),
            message,
            "name a place that the bar has, such as " + (view.firstBeat(bar) + 1) + "&");
  }

  private void nothing(Miss.Nothing miss) {
    Level level = miss.level();
    Gaps gaps = context.problems().gaps();
    if (filters.isEmpty() ? gaps.strokes() : gaps.hide(filters, level)) {
      return;
    }
    String kind =
        level == null
            ? "stroke"
            : switch (level) {
              case GHOST -> "ghost stroke";
              case PLAIN -> "plain stroke";
              case ACCENT -> "accent";
            };
    Count count = miss.count();
    String message =
        "there is no " + kind + " of “" + words + "” " + (count == null ? "here" : "at " + count);
    Diagnostic made = make(Code.NOTHING_THERE, miss.span(), miss.bar(), count, message);
    PlaceQuery query = new PlaceQuery(view, target);
    List<Count> near =
        query.near(miss.bar(), count == null ? null : query.plainPlace(count, miss.bar()));
    if (near.isEmpty()) {
      context.problems().add(made.help(elsewhere(query.barsPlayed())));
      return;
    }
    List<Count> nearest = near.subList(0, Math.min(near.size(), MOST_NAMED));
    List<String> named =
        query.near(miss.bar(), null).stream()
            .filter(nearest::contains)
            .map(Count::toString)
            .toList();
    made = made.help("in bar " + miss.bar() + " it is played at " + String.join(" ", named));
    if (count != null) {
      Spot spot = context.line().spot(miss.span());
      for (Count other : near.subList(0, Math.min(near.size(), MOST_FIXES))) {
        made = made.fix("write " + other, spot, other.toString());
      }
    }
    context.problems().add(made);
  }

  private static String elsewhere(List<Integer> bars) {
    if (bars.isEmpty()) {
      return "nothing above this line plays it";
    }
    return "it is played in "
        + (bars.size() == 1 ? "bar " : "bars ")
        + bars.stream().limit(8).map(String::valueOf).collect(Collectors.joining(" "));
  }
}
