package tabor.notation;

import java.util.ArrayList;
import java.util.List;
import tabor.groove.Snap;
import tabor.groove.Stroke;
import tabor.rhythm.Meter;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;

/**
 * A place of a bar that needs a sign of its own: where something is struck or a roll ends.
 *
 * @param at distance from the barline in whole notes
 * @param groups the slots that it shares with other strokes, outermost first
 */
record Onset(Time at, List<Group> groups) {
  /** A slot that holds several strokes: from {@code start} to before {@code end}. */
  record Group(Time start, Time end) {
    boolean holds(Time at) {
      return start.compareTo(at) <= 0 && at.before(end);
    }

    boolean holds(Group other) {
      return start.compareTo(other.start) <= 0 && other.end.compareTo(end) <= 0;
    }
  }

  /** A place that belongs to no group. */
  static Onset bare(Time at) {
    return new Onset(at, List.of());
  }

  /** The place of a stroke; its groups are left out if they do not lead to where it is. */
  static Onset of(Snap snap, Stroke stroke, Meter meter) {
    Slot slot = stroke.slot();
    if (slot.parts().isEmpty() || !slot.division().isInside(meter)) {
      return bare(stroke.at());
    }
    List<Group> groups = new ArrayList<>();
    Time start = slot.start(meter);
    Time length = slot.length(meter);
    for (Slot.Part part : slot.parts()) {
      groups.add(new Group(snap.shown(stroke, start), snap.shown(stroke, start.plus(length))));
      length = length.over(part.of());
      start = start.plus(length.times(part.index()));
    }
    return snap.shown(stroke, start).equals(stroke.at())
        ? new Onset(stroke.at(), List.copyOf(groups))
        : bare(stroke.at());
  }

  /** The same place seen from inside a stretch: without the groups that are not smaller. */
  Onset within(Time start, Time end) {
    int from = 0;
    Group stretch = new Group(start, end);
    while (from < groups.size()
        && (groups.get(from).holds(stretch) || !stretch.holds(groups.get(from)))) {
      from++;
    }
    return from == 0 ? this : new Onset(at, groups.subList(from, groups.size()));
  }
}
