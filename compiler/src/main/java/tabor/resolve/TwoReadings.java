package tabor.resolve;

import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.groove.Stroke;
import tabor.lists.Lists;
import tabor.rhythm.Count;
import tabor.rhythm.CountNames;
import tabor.source.Spot;
import tabor.syntax.At;
import tabor.syntax.CountRef;
import tabor.syntax.Edit;

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
    Predicate<Stroke> target = TargetFilter.any(EditParts.targets(edit), context.kit());
    PlaceReader reader = new PlaceReader(view, target, edit instanceof Edit.Add);
    PlaceQuery.Bars bars = new PlaceQuery(view, stroke -> true).bars(EditParts.bars(edit));
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
                .fix("write " + ours, spot, ours.toString())
                .fix("write " + theirs, spot, theirs.toString()));
  }
}
