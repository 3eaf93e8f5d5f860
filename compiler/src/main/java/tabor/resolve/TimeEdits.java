package tabor.resolve;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.groove.Ornament;
import tabor.groove.Ornaments;
import tabor.groove.Stroke;
import tabor.rhythm.Count;
import tabor.rhythm.Meters;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;
import tabor.source.Spot;
import tabor.syntax.Distance;
import tabor.syntax.Edit;

/** The edits that change when something is struck: {@code double}, {@code move}, {@code shift}. */
record TimeEdits(LineContext context, SectionDraft draft) {
  private static long fineness(Slot slot) {
    long fineness = slot.division().slots();
    for (Slot.Part part : slot.parts()) {
      fineness *= part.of();
    }
    return fineness;
  }

  SectionDraft multiply(Edit.Change edit, List<Stroke> chosen) {
    int times = edit.verb().strokes();
    if (context.tooMany(draft, (long) chosen.size() * (times - 1))) {
      return draft;
    }
    Set<Stroke> these = SectionDraft.identities(chosen);
    List<Stroke> all = new ArrayList<>();
    for (Stroke stroke : draft.strokes()) {
      if (!these.contains(stroke)) {
        all.add(stroke);
        continue;
      }
      if (fineness(stroke.slot()) * times > SectionDraft.FINEST) {
        context.tell(
            Code.TOO_DEEP,
            edit.span(),
            "the strokes are divided too finely to be divided once more",
            "a beat has at most " + SectionDraft.FINEST + " places");
        return draft;
      }
      multiply(stroke, times, all);
    }
    return draft.with(all);
  }

  /**
   * The strokes that one becomes: equal parts of its slot, the last with the holds after it. What
   * rolled as long as it was held rolls no more, and its holds go too.
   */
  private void multiply(Stroke stroke, int times, List<Stroke> all) {
    Time own = draft.view().grid(stroke.bar()).placeLength(stroke.slot());
    Time one = own.over(times);
    boolean rolled = stroke.ornaments().has(Ornament.ROLL);
    Ornaments first = stroke.ornaments().without(Ornament.ROLL);
    for (int i = 0; i < times; i++) {
      List<Slot.Part> parts = new ArrayList<>(stroke.slot().parts());
      parts.add(new Slot.Part(i, times));
      Slot slot = new Slot(stroke.slot().division(), stroke.slot().index(), parts);
      Time held = rolled || i + 1 < times ? one : one.plus(stroke.length().minus(own));
      Stroke part =
          stroke.moved(
              stroke.bar(), stroke.at().plus(one.times(i)), held.sign() > 0 ? held : one, slot);
      all.add(part.with(i == 0 ? first : Ornaments.NONE).from(context.line().spot()));
    }
  }

  SectionDraft move(Edit.Move edit, List<Stroke> chosen, Predicate<Stroke> target) {
    Count from = edit.from().count();
    // A place within a group leaves the group; a whole group moves as one.
    int inGroup =
        Math.max(0, from.places().size() - (from.syllable() == Count.Syllable.NONE ? 1 : 0));
    PlaceReader reader = new PlaceReader(draft.view(), target, true);
    Set<Stroke> these = SectionDraft.identities(chosen);
    List<Stroke> all = new ArrayList<>();
    Map<Integer, CountReading> goals = new HashMap<>();
    for (Stroke stroke : draft.strokes()) {
      if (!these.contains(stroke)) {
        all.add(stroke);
        continue;
      }
      CountReading to = goals.get(stroke.bar());
      if (to == null) {
        PlaceReading reading = reader.read(edit.to(), stroke.bar());
        if (reading.miss() != null) {
          context.say(draft.view(), target, "", List.of(reading.miss()));
          return draft;
        }
        to = reading.readings().get(0);
        goals.put(stroke.bar(), to);
      }
      all.add(moved(stroke, to, inGroup).from(context.line().spot()));
    }
    return draft.with(all);
  }

  private Stroke moved(Stroke stroke, CountReading to, int inGroup) {
    List<Slot.Part> own = stroke.slot().parts();
    List<Slot.Part> parts = new ArrayList<>(to.slot().parts());
    parts.addAll(own.subList(Math.min(inGroup, own.size()), own.size()));
    Slot slot = new Slot(to.slot().division(), to.slot().index(), parts);
    Slot fits = fineness(slot) > SectionDraft.FINEST ? to.slot() : slot;
    BarGrid grid = draft.view().grid(stroke.bar());
    return stroke.moved(stroke.bar(), grid.place(fits), grid.placeLength(fits), fits);
  }

  SectionDraft shift(Edit.Shift edit, List<Stroke> chosen) {
    Meters meters = context.frame().meters();
    Time unit = unit(edit.unit());
    int by = edit.by().whole();
    if (unit == null) {
      return draft;
    }
    if (by < 1 || by > 100_000) {
      context.tell(
          Code.SYNTAX,
          edit.by().span(),
          "this number is out of range",
          "shift by 1 or more; by a whole section nothing changes");
      return draft;
    }
    Time length = meters.length(draft.bars());
    Time distance = unit.times(by).mod(length);
    Time later = edit.later() ? distance : length.minus(distance).mod(length);
    Set<Stroke> these = SectionDraft.identities(chosen);
    List<Stroke> all = new ArrayList<>(draft.strokes().size());
    Map<Time, Shifted> shifted = new HashMap<>();
    Spot spot = context.line().spot();
    for (Stroke stroke : draft.strokes()) {
      if (!these.contains(stroke) || stroke.bar() == 0) {
        all.add(stroke);
        continue;
      }
      // Bars of one meter are alike: a place needs to be worked out once.
      Shifted to =
          meters.size() == 1
              ? shifted.computeIfAbsent(stroke.at(), at -> shifted(at.plus(later)))
              : shifted(meters.start(stroke.bar()).plus(stroke.at()).plus(later).mod(length));
      int bar =
          meters.size() == 1 ? (stroke.bar() - 1 + to.bar()) % draft.bars() + 1 : to.bar() + 1;
      all.add(stroke.moved(bar, to.place(), stroke.length(), to.slot(), spot));
    }
    return draft.with(all);
  }

  /**
   * Where a stroke comes to stand.
   *
   * @param bar so many bars after bar 1
   * @param place in that bar
   */
  private record Shifted(int bar, Time place, Slot slot) {}

  /** The place at a distance from the line of bar 1. */
  private Shifted shifted(Time distance) {
    Meters meters = context.frame().meters();
    int bar = meters.barAt(distance);
    Time place = distance.minus(meters.start(bar));
    return new Shifted(bar - 1, place, draft.view().grid(bar).fewest(place));
  }

  /** The length of a unit; null, and said so, for bars that are not equally long. */
  private @Nullable Time unit(Distance unit) {
    Meters meters = context.frame().meters();
    if (unit instanceof Distance.OfValue value) {
      return value.value().length();
    }
    if (unit instanceof Distance.Beats) {
      return meters.first().tempoBeat();
    }
    if (meters.hasEqualBars()) {
      return meters.first().bar();
    }
    context.tell(
        Code.BAR_LENGTH,
        unit.span(),
        "the bars of " + meters + " are not equally long",
        "shift by beats or by a note value");
    return null;
  }
}
