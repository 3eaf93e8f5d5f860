package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.groove.Ornaments;
import tabor.groove.Stroke;
import tabor.rhythm.Count;
import tabor.rhythm.NoteValue;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.At;
import tabor.syntax.CountWord;
import tabor.syntax.Edit;
import tabor.syntax.Line;

/** The edits that change when something is struck: {@code double}, {@code move}, {@code shift}. */
final class TimeEdits {
  private final Work work;
  private final Line line;

  TimeEdits(Work work, Line line) {
    this.work = work;
    this.line = line;
  }

  void multiply(Edit.Multiply edit, List<Stroke> chosen) {
    int times = edit.verb().text().equals("double") ? 2 : 3;
    if (work.tooMany((long) chosen.size() * (times - 1), line.spot())) {
      return;
    }
    Set<Stroke> these = Edits.identities(chosen);
    List<Stroke> all = new ArrayList<>();
    for (Stroke stroke : work.strokes()) {
      if (!these.contains(stroke)) {
        all.add(stroke);
        continue;
      }
      long fineness = (long) stroke.slot().division().slots() * times;
      for (Slot.Part part : stroke.slot().parts()) {
        fineness *= part.of();
      }
      if (fineness > Work.FINEST) {
        work.problems.add(
            work.problems
                .make(
                    Code.TOO_DEEP,
                    line,
                    edit.span(),
                    "the strokes are divided too finely to be divided once more")
                .help("a beat has at most " + Work.FINEST + " places"));
        return;
      }
      Time own = work.grid.placeLength(stroke.slot());
      Time one = own.over(times);
      for (int i = 0; i < times; i++) {
        List<Slot.Part> parts = new ArrayList<>(stroke.slot().parts());
        parts.add(new Slot.Part(i, times));
        Slot slot = new Slot(stroke.slot().division(), stroke.slot().index(), parts);
        Time length = i + 1 < times ? one : one.plus(stroke.length().minus(own));
        Stroke part =
            stroke.moved(
                stroke.bar(),
                stroke.at().plus(one.times(i)),
                length.sign() > 0 ? length : one,
                slot);
        all.add(Work.from(i == 0 ? part : part.with(Ornaments.NONE), line.spot()));
      }
    }
    work.strokes(all);
  }

  void move(Edit.Move edit, Selector selector, Predicate<Stroke> target, Span what) {
    At.Places from = new At.Places(List.of(new At.One(edit.from())), edit.from().span());
    List<Stroke> chosen = selector.select(target, new At(from, edit.bars(), null), what);
    if (chosen == null) {
      return;
    }
    chosen = Dealing.fix(work, chosen, edit.targets());
    Count count = edit.from().count();
    // A place within a group leaves the group; a whole group moves as one.
    int inGroup = count.places().size() - (count.syllable() == Count.Syllable.NONE ? 1 : 0);
    inGroup = Math.max(0, inGroup);
    Set<Stroke> these = Edits.identities(chosen);
    List<Stroke> all = new ArrayList<>();
    int readBar = -1;
    CountReader.Reading to = null;
    for (Stroke stroke : work.strokes()) {
      if (!these.contains(stroke)) {
        all.add(stroke);
        continue;
      }
      if (stroke.bar() != readBar) {
        readBar = stroke.bar();
        to = goal(edit.to(), readBar, selector, target);
      }
      if (to == null) {
        return;
      }
      List<Slot.Part> own = stroke.slot().parts();
      List<Slot.Part> parts = new ArrayList<>(to.slot().parts());
      parts.addAll(own.subList(Math.min(inGroup, own.size()), own.size()));
      Slot slot = new Slot(to.slot().division(), to.slot().index(), parts);
      long fineness = slot.division().slots();
      for (Slot.Part part : parts) {
        fineness *= part.of();
      }
      Slot fits = fineness > Work.FINEST ? to.slot() : slot;
      Stroke moved =
          stroke.moved(stroke.bar(), work.grid.place(fits), work.grid.placeLength(fits), fits);
      all.add(Work.from(moved, line.spot()));
    }
    work.strokes(all);
  }

  private CountReader.@Nullable Reading goal(
      CountWord word, int bar, Selector selector, Predicate<Stroke> target) {
    List<CountReader.Reading> readings =
        selector.reader().read(word.count(), bar, selector.inBar(bar), target);
    if (readings.isEmpty()) {
      selector.misses().outsideBar(word.span(), word.count(), bar);
      return null;
    }
    if (readings.size() > 1) {
      selector.misses().ambiguous(word, bar, readings);
      return null;
    }
    return readings.get(0);
  }

  void shift(Edit.Shift edit, List<Stroke> chosen) {
    Time value = value(edit.value().text());
    int by = edit.by().whole();
    Time length = work.meter().bar().times(work.bars);
    if (by < 1 || by > 100_000) {
      work.problems.add(
          work.problems
              .make(Code.SYNTAX, line, edit.by().span(), "this number is out of range")
              .help("shift by 1 or more; by a whole section nothing changes"));
      return;
    }
    Time distance = value.times(by).mod(length);
    if (!edit.later()) {
      distance = length.minus(distance).mod(length);
    }
    Set<Stroke> these = Edits.identities(chosen);
    List<Stroke> all = new ArrayList<>();
    Time bar = work.meter().bar();
    for (Stroke stroke : work.strokes()) {
      if (!these.contains(stroke) || stroke.bar() == 0) {
        all.add(stroke);
        continue;
      }
      Time at = bar.times(stroke.bar() - 1L).plus(stroke.at()).plus(distance).mod(length);
      int newBar = (int) at.over(bar).floor();
      Time place = at.minus(bar.times(newBar));
      Slot slot = work.grid.fewest(place);
      all.add(Work.from(stroke.moved(newBar + 1, place, stroke.length(), slot), line.spot()));
    }
    work.strokes(all);
  }

  private Time value(String word) {
    return switch (word) {
      case "beat", "beats" -> work.meter().tempoBeat();
      case "bar", "bars" -> work.meter().bar();
      default -> NoteValue.of(word).map(NoteValue::length).orElse(Time.of(1, 8));
    };
  }
}
