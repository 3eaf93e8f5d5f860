package tabor.resolve;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.groove.Loudness;
import tabor.groove.Stroke;
import tabor.rhythm.Time;
import tabor.syntax.CountWord;
import tabor.syntax.Edit;
import tabor.syntax.Line;
import tabor.syntax.Num;

/** Dynamics and hairpins. */
final class DynamicEdits {
  private final Work work;
  private final Line line;
  private final Selector selector;

  DynamicEdits(Work work, Line line) {
    this.work = work;
    this.line = line;
    this.selector = new Selector(work, line);
  }

  void dynamic(Edit.Dynamic edit) {
    Loudness loudness = Loudness.of(edit.loudness().text()).orElse(null);
    int bar = bar(edit.bar(), 1);
    if (loudness == null || bar < 0) {
      return;
    }
    CountWord word = edit.at();
    Time at = word == null ? work.grid.start(work.firstBeat(bar)) : place(word, bar);
    if (at != null) {
      work.marks.removeIf(mark -> mark.bar() == bar && mark.at().equals(at));
      work.marks.add(new Loudness.Mark(bar, at, loudness));
    }
  }

  void hairpin(Edit.Hairpin edit) {
    Loudness loudness = Loudness.of(edit.loudness().text()).orElse(null);
    int fromBar = bar(edit.fromBar(), 1);
    int toBar = fromBar < 0 ? -1 : bar(edit.toBar(), fromBar);
    if (loudness == null || toBar < 0) {
      return;
    }
    Time from = place(edit.from(), fromBar);
    Time to = from == null ? null : place(edit.to(), toBar);
    if (from == null || to == null) {
      return;
    }
    if (toBar < fromBar || (toBar == fromBar && to.compareTo(from) <= 0)) {
      work.problems.add(
          work.problems
              .make(
                  Code.COUNT_OUTSIDE_BAR,
                  line.spot(edit.to().span()),
                  toBar,
                  edit.to().count().toString(),
                  "this ends before it begins")
              .help("name the bar of its end: to 1 in bar " + (fromBar + 1)));
      return;
    }
    work.hairpins.add(
        new Loudness.Hairpin(
            edit.verb().text().equals("crescendo"), fromBar, from, toBar, to, loudness));
  }

  private int bar(@Nullable Num num, int otherwise) {
    return num == null ? otherwise : selector.exists(num) ? num.whole() : -1;
  }

  private @Nullable Time place(CountWord word, int bar) {
    List<Stroke> here = selector.inBar(bar);
    List<CountReader.Reading> readings =
        selector.reader().read(word.count(), bar, here, stroke -> true);
    if (readings.isEmpty()) {
      selector.misses().outsideBar(word.span(), word.count(), bar);
      return null;
    }
    if (readings.size() > 1) {
      List<CountReader.Reading> meeting =
          readings.stream()
              .filter(r -> here.stream().anyMatch(s -> selector.reader().meets(s, r)))
              .toList();
      if (meeting.size() > 1) {
        selector.misses().ambiguous(word, bar, meeting);
        return null;
      }
      return meeting.isEmpty() ? readings.get(0).place() : meeting.get(0).place();
    }
    return readings.get(0).place();
  }
}
