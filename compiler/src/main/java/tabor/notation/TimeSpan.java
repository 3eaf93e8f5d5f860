package tabor.notation;

import java.util.ArrayList;
import java.util.List;
import tabor.rhythm.Time;

/**
 * A part of a bar with what happens in one voice there, and the grid that this needs.
 *
 * @param start distance from the barline
 * @param end where it ends
 * @param marks in order of time
 * @param groups the slots in it that hold several strokes; none overlaps another
 * @param grid into how many equal parts it must be cut so that everything falls on an edge; 0 if
 *     that is more than {@link #FINEST}
 */
record TimeSpan(Time start, Time end, List<Onset> marks, List<Onset.Group> groups, long grid) {
  /** The finest grid that is written as one tuplet. */
  static final long FINEST = 1 << 16;

  /** Finds groups and grid of a stretch. */
  static TimeSpan of(Time start, Time end, List<Onset> marks) {
    List<Onset> inside = new ArrayList<>();
    for (Onset mark : marks) {
      inside.add(mark.within(start, end));
    }
    List<Onset.Group> groups = new ArrayList<>();
    if (!outermost(inside, groups)) {
      // Two parts group differently across each other: only the places themselves count then.
      inside.replaceAll(mark -> Onset.bare(mark.at()));
      groups.clear();
    }
    Time length = end.minus(start);
    long grid = 1;
    for (Onset mark : inside) {
      grid = finer(grid, mark.at().minus(start).over(length));
    }
    if (!groups.isEmpty()) {
      grid = gridAround(inside, groups, start, length);
    }
    return new TimeSpan(start, end, List.copyOf(inside), List.copyOf(groups), grid);
  }

  private static long gridAround(
      List<Onset> marks, List<Onset.Group> groups, Time start, Time length) {
    long grid = 1;
    int next = 0;
    for (Onset mark : marks) {
      while (next < groups.size() && groups.get(next).end().compareTo(mark.at()) <= 0) {
        next++;
      }
      if (next == groups.size() || !groups.get(next).holds(mark.at())) {
        grid = finer(grid, mark.at().minus(start).over(length));
      }
    }
    for (Onset.Group group : groups) {
      grid = finer(grid, group.start().minus(start).over(length));
      grid = finer(grid, group.end().minus(start).over(length));
    }
    return grid;
  }

  /** Collects the groups that no other one holds; false if two overlap. */
  private static boolean outermost(List<Onset> marks, List<Onset.Group> found) {
    List<Onset.Group> all = new ArrayList<>();
    for (Onset mark : marks) {
      if (!mark.groups().isEmpty()) {
        all.add(mark.groups().get(0));
      }
    }
    all.sort(
        (a, b) -> {
          int byStart = a.start().compareTo(b.start());
          return byStart != 0 ? byStart : b.end().compareTo(a.end());
        });
    for (Onset.Group group : all) {
      Onset.Group last = found.isEmpty() ? null : found.get(found.size() - 1);
      if (last == null || last.end().compareTo(group.start()) <= 0) {
        found.add(group);
      } else if (!last.holds(group)) {
        return false;
      }
    }
    found.removeIf(group -> isSingle(group, marks));
    return true;
  }

  /** True if all that happens in a group happens at its start. */
  private static boolean isSingle(Onset.Group group, List<Onset> marks) {
    int low = firstAfter(group.start(), marks);
    return low == marks.size() || !marks.get(low).at().before(group.end());
  }

  /** The index of the first mark after a place. */
  private static int firstAfter(Time place, List<Onset> marks) {
    int low = 0;
    int high = marks.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (marks.get(middle).at().compareTo(place) <= 0) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private static long finer(long grid, Time part) {
    if (grid == 0 || part.den() > FINEST) {
      return 0;
    }
    long common = Time.lcm(grid, part.den());
    return common > FINEST ? 0 : common;
  }

  Time length() {
    return end.minus(start);
  }

  /** True if the stretch may be cut here: an edge of its grid, and inside no group. */
  boolean canCut(Time place) {
    for (Onset.Group group : groups) {
      if (group.start().before(place) && place.before(group.end())) {
        return false;
      }
    }
    return grid == 0 || place.minus(start).over(length()).times(grid).isWhole();
  }

  /** The marks from one place to before another. */
  List<Onset> between(Time from, Time to) {
    int first = firstAfter(from, marks);
    while (first > 0 && marks.get(first - 1).at().equals(from)) {
      first--;
    }
    int last = first;
    while (last < marks.size() && marks.get(last).at().before(to)) {
      last++;
    }
    return marks.subList(first, last);
  }
}
