package tabor.resolve;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.lists.Lists;
import tabor.rhythm.Count;
import tabor.rhythm.CountNames;
import tabor.source.Spot;
import tabor.syntax.At;
import tabor.syntax.CountRef;
import tabor.syntax.Edit;
import tabor.syntax.TargetRef;

/**
 * Says where a count can be read in two ways because a word that the lesson is counted with is one
 * of our own syllables. Ours wins.
 */
record TwoReadings(LineContext context, SectionView view) {
  /** True if some count may have two readings by the words of a section. */
  static boolean mayBe(SectionView view) {
    return view.words().eighthsThrough()
        || Lists.any(view.words().all(), List.of("e", "&", "a")::contains);
  }

  void check(Edit edit) {
    List<TargetFilter> filters =
        Lists.filter(
            Lists.map(targets(edit), target -> TargetFilter.of(target, context.kit())),
            java.util.Objects::nonNull);
    PlaceReader reader = new PlaceReader(view, TargetFilter.any(filters), edit instanceof Edit.Add);
    PlaceQuery.Bars bars = new PlaceQuery(view, stroke -> true).bars(bars(edit));
    for (CountRef count : EditParts.counts(edit)) {
      for (int bar : bars.numbers()) {
        Two two = two(reader, count, bar);
        if (two != null) {
          tell(count, bar, two);
          break;
        }
      }
    }
    for (At.EverySyllable every : EditParts.everySyllables(edit)) {
      bars.numbers().stream()
          .map(bar -> two(reader, every, bar))
          .filter(java.util.Objects::nonNull)
          .findFirst()
          .ifPresent(two -> tell(every, two));
    }
  }

  /** A word as we read it and as the lesson is counted, each with its division named. */
  private record Two(Count ours, Count theirs) {}

  private @Nullable Two two(PlaceReader reader, CountRef count, int bar) {
    List<CountReading> ours = reader.read(count, bar).readings();
    CountReading theirs = ours.size() == 1 ? reader.passedOver(count, ours.get(0), bar) : null;
    return theirs == null ? null : new Two(named(ours.get(0), bar), named(theirs, bar));
  }

  private @Nullable Two two(PlaceReader reader, At.EverySyllable every, int bar) {
    for (int beat = 1; beat <= view.grid(bar).beats(); beat++) {
      Two two = two(reader, new CountRef(Count.of(beat, every.syllable()), every.span()), bar);
      if (two != null) {
        return two;
      }
    }
    return null;
  }

  private static List<TargetRef> targets(Edit edit) {
    return edit instanceof Edit.Move move ? move.targets() : EditParts.targets(edit);
  }

  private static At.@Nullable Bars bars(Edit edit) {
    return EditParts.bars(edit);
  }

  private Count named(CountReading reading, int bar) {
    Count count = CountNames.of(reading.slot(), view.meters().of(bar));
    return new Count(
        count.beat(), count.syllable(), count.places(), reading.slot().division().slots());
  }

  private void tell(At.EverySyllable every, Two two) {
    String written = "every " + every.syllable().sign();
    context.tell(
        Code.COUNTING_WORD,
        every.span(),
        written
            + " is read as "
            + two.ours()
            + " and its like here, not as "
            + two.theirs()
            + ", though the lesson is counted so",
        "write out the counts with their division, such as " + two.ours() + " or " + two.theirs());
  }

  private void tell(CountRef count, int bar, Two two) {
    Count ours = two.ours();
    Count theirs = two.theirs();
    Spot spot = context.line().spot(count.span());
    context
        .problems()
        .add(
            context
                .problems()
                .make(
                    Code.COUNTING_WORD,
                    spot,
                    bar,
                    count.count().toString(),
                    count.words()
                        + " is read as "
                        + ours
                        + " here, not as "
                        + theirs
                        + ", though the lesson is counted so")
                .help("name the division: " + ours + " or " + theirs)
                .fix(Diagnostic.Fix.of("write " + ours, spot, ours.toString()))
                .fix(Diagnostic.Fix.of("write " + theirs, spot, theirs.toString())));
  }
}
