package tabor.resolve;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
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
final class TwoReadings {
  private final LineContext context;
  private final SectionView view;

  /** Looks at a line that acts on the strokes of a view. */
  TwoReadings(LineContext context, SectionView view) {
    this.context = context;
    this.view = view;
  }

  /** True if some count may have two readings by the words of a section. */
  static boolean mayBe(SectionView view) {
    return view.words().eighthsThrough()
        || view.words().all().stream().anyMatch(List.of("e", "&", "a")::contains);
  }

  void check(Edit edit) {
    List<TargetFilter> filters =
        targets(edit).stream()
            .map(target -> TargetFilter.of(target, context.kit()))
            .filter(java.util.Objects::nonNull)
            .toList();
    PlaceReader reader = new PlaceReader(view, TargetFilter.any(filters), edit instanceof Edit.Add);
    PlaceQuery.Bars bars = new PlaceQuery(view, stroke -> true).bars(bars(edit));
    for (CountRef count : EditParts.counts(edit)) {
      for (int bar : bars.numbers()) {
        List<CountReading> ours = reader.read(count, bar).readings();
        CountReading theirs = ours.size() == 1 ? reader.passedOver(count, ours.get(0), bar) : null;
        if (theirs != null) {
          tell(count, bar, named(ours.get(0), bar), named(theirs, bar));
          break;
        }
      }
    }
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

  private void tell(CountRef count, int bar, Count ours, Count theirs) {
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
