package tabor.notation;

import java.util.List;
import java.util.Set;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/** Decides how a stretch is divided: which tuplets it needs and what stands where in them. */
final class Planner {
  private final Set<Time> edges;
  private boolean tooFine;

  private Planner(Set<Time> edges) {
    this.edges = edges;
  }

  /**
   * Plans a stretch.
   *
   * @param beat true if it is one beat: a dotted one is then divided in two by a duplet
   * @param edges takes up the edges of groups inside tuplets, where secondary beams break
   */
  static RhythmNode plan(TimeSpan stretch, boolean beat, Set<Time> edges) {
    Planner planner = new Planner(edges);
    RhythmNode root = new RhythmNode(null, stretch.length());
    planner.divide(root, Time.ZERO, stretch.length(), stretch, beat);
    if (planner.tooFine) {
      root = apart(stretch);
    }
    root.sort();
    return root;
  }

  private void divide(RhythmNode into, Time offset, Time written, TimeSpan stretch, boolean beat) {
    long grid = stretch.grid();
    if (grid == 0) {
      tooFine = true;
      return;
    }
    if (stretch.marks().isEmpty()) {
      return;
    }
    RhythmNode target = into;
    Time from = offset;
    Time cell = written.over(grid);
    if (needsTuplet(written, grid, beat)) {
      RhythmNode.Ratio ratio = ratio(written, grid);
      cell = ratio.unit().length();
      target = new RhythmNode(ratio, cell.times(grid));
      into.add(offset, target);
      from = Time.ZERO;
    }
    Time factor = cell.times(grid).over(stretch.length());
    int group = 0;
    List<Onset.Group> groups = stretch.groups();
    for (Onset mark : stretch.marks()) {
      while (group < groups.size() && groups.get(group).end().compareTo(mark.at()) <= 0) {
        group++;
      }
      if (group == groups.size() || !groups.get(group).holds(mark.at())) {
        target.add(from.plus(mark.at().minus(stretch.start()).times(factor)), null);
      }
    }
    for (Onset.Group inner : groups) {
      if (target.isTuplet()) {
        edges.add(inner.start());
        edges.add(inner.end());
      }
      divide(
          target,
          from.plus(inner.start().minus(stretch.start()).times(factor)),
          inner.end().minus(inner.start()).times(factor),
          TimeSpan.of(inner.start(), inner.end(), stretch.between(inner.start(), inner.end())),
          false);
    }
  }

  /**
   * Plain halving needs none, nor does what gives writable values; but a dotted beat in two, four,
   * eight is a tuplet.
   */
  private static boolean needsTuplet(Time written, long grid, boolean beat) {
    if (beat && Meter.isDotted(written) && grid > 1 && Long.bitCount(grid) == 1) {
      return true;
    }
    return !NoteValues.isWritable(written.over(grid));
  }

  /**
   * The usual number: as many notes of the value that would fill the stretch undivided, doubled as
   * long as it is not more than there are.
   */
  private static RhythmNode.Ratio ratio(Time written, long grid) {
    long normal = written.num() >> Long.numberOfTrailingZeros(written.num());
    while (written.over(normal).compareTo(NoteValues.LONGEST) > 0
        || (normal * 2 <= grid && written.over(normal * 2).compareTo(NoteValues.SHORTEST) >= 0)) {
      normal *= 2;
    }
    return new RhythmNode.Ratio(grid, normal, NoteValues.notAbove(written.over(normal)));
  }

  /**
   * The last resort where no common grid is fine enough: every sign is a tuplet of its own. Exact,
   * though nobody could read it.
   */
  private static RhythmNode apart(TimeSpan stretch) {
    RhythmNode root = new RhythmNode(null, stretch.length());
    Time at = stretch.start();
    boolean struck = false;
    for (Onset mark : stretch.marks()) {
      single(root, at.minus(stretch.start()), mark.at().minus(at), struck);
      at = mark.at();
      struck = true;
    }
    single(root, at.minus(stretch.start()), stretch.end().minus(at), struck);
    return root;
  }

  private static void single(RhythmNode root, Time at, Time length, boolean struck) {
    if (length.sign() == 0) {
      return;
    }
    Written.Type unit = NoteValues.notAbove(length);
    Time factor = length.over(unit.length());
    RhythmNode only =
        new RhythmNode(new RhythmNode.Ratio(factor.den(), factor.num(), unit), unit.length());
    if (struck) {
      only.add(Time.ZERO, null);
    }
    root.add(at, only);
  }
}
