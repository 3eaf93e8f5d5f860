package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.groove.Loudness;
import tabor.rhythm.Time;
import tabor.syntax.CountRef;
import tabor.syntax.Edit;
import tabor.syntax.Num;

/** Dynamics and hairpins. */
record DynamicEdits(LineContext context, SectionDraft draft) {
  SectionDraft dynamic(Edit.Dynamic edit) {
    int bar = bar(edit.bar(), 1);
    if (bar < 0) {
      return draft;
    }
    CountRef count = edit.at();
    Time at =
        count == null
            ? draft.view().grid(bar).start(draft.view().firstBeat(bar))
            : context.place(draft.view(), count, bar);
    if (at == null) {
      return draft;
    }
    List<Loudness.Mark> marks = new ArrayList<>(draft.marks());
    marks.removeIf(mark -> mark.bar() == bar && mark.at().equals(at));
    marks.add(new Loudness.Mark(bar, at, edit.loudness().value()));
    return draft.marks(marks);
  }

  SectionDraft hairpin(Edit.Hairpin edit) {
    int fromBar = bar(edit.fromBar(), 1);
    int toBar = fromBar < 0 ? -1 : bar(edit.toBar(), fromBar);
    Time from = toBar < 0 ? null : context.place(draft.view(), edit.from(), fromBar);
    Time to = from == null ? null : context.place(draft.view(), edit.to(), toBar);
    if (from == null || to == null) {
      return draft;
    }
    if (toBar < fromBar || (toBar == fromBar && to.compareTo(from) <= 0)) {
      context
          .problems()
          .tell(
              Code.COUNT_OUTSIDE_BAR,
              context.line().spot(edit.to().span()),
              toBar,
              edit.to().count().toString(),
              "this ends before it begins",
              "name the bar of its end: to 1 in bar " + (fromBar + 1));
      return draft;
    }
    List<Loudness.Hairpin> hairpins = new ArrayList<>(draft.hairpins());
    hairpins.add(
        new Loudness.Hairpin(edit.grows(), fromBar, from, toBar, to, edit.loudness().value()));
    return draft.hairpins(hairpins);
  }

  /** The number of a bar, {@code otherwise} where none is named; -1, and said so, if none is so. */
  private int bar(@Nullable Num num, int otherwise) {
    if (num == null || new PlaceQuery(draft.view(), stroke -> true).has(num)) {
      return num == null ? otherwise : num.whole();
    }
    context.say(draft.view(), stroke -> true, "", List.of(new Miss.NoBar(num.span())));
    return -1;
  }
}
