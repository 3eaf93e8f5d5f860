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
  static Node plan(Stretch stretch, boolean beat, Set<Time> edges) {
    Planner planner = new Planner(edges);
    Node root = new Node(null, stretch.length());
    planner.divide(root, Time.ZERO, stretch.length(), stretch, beat);
    if (planner.tooFine) {
      root = apart(stretch);
    }
    root.sort();
    return root;
  }

  private void divide(Node into, Time offset, Time written, Stretch stretch, boolean beat) {
    long grid = stretch.grid();
    if (grid == 0) {
      tooFine = true;
      return;
    }
    if (stretch.marks().isEmpty()) {
      return;
    }
    Node target = into;
    Time from = offset;
    Time cell = written.over(grid);
    if (needsTuplet(written, grid, beat)) {
      Node.Ratio ratio = ratio(written, grid);
      cell = ratio.unit().length();
      target = new Node(ratio, cell.times(grid));
      into.add(offset, target);
      from = Time.ZERO;
    }
    Time factor = cell.times(grid).over(stretch.length());
    int group = 0;
    List<Mark.Group> groups = stretch.groups();
    for (Mark mark : stretch.marks()) {
      while (group < groups.size() && groups.get(group).end().compareTo(mark.at()) <= 0) {
        group++;
      }
      if (group == groups.size() || !groups.get(group).holds(mark.at())) {
        target.add(from.plus(mark.at().minus(stretch.start()).times(factor)), null);
      }
    }
    for (Mark.Group inner : groups) {
      if (target.isTuplet()) {
        edges.add(inner.start());
        edges.add(inner.end());
      }
      divide(
          target,
          from.plus(inner.start().minus(stretch.start()).times(factor)),
          inner.end().minus(inner.start()).times(factor),
          Stretch.of(inner.start(), inner.end(), stretch.between(inner.start(), inner.end())),
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
    return !Values.isWritable(written.over(grid));
  }

  /**
   * The usual number: as many notes of the value that would fill the stretch undivided, doubled as
   * long as it is not more than there are.
   */
  private static Node.Ratio ratio(Time written, long grid) {
    long normal = written.num() >> Long.numberOfTrailingZeros(written.num());
    while (written.over(normal).compareTo(Values.LONGEST) > 0
        || (normal * 2 <= grid && written.over(normal * 2).compareTo(Values.SHORTEST) >= 0)) {
      normal *= 2;
    }
    return new Node.Ratio(grid, normal, Values.notAbove(written.over(normal)));
  }

  /**
   * The last resort where no common grid is fine enough: every sign is a tuplet of its own. Exact,
   * though nobody could read it.
   */
  private static Node apart(Stretch stretch) {
    Node root = new Node(null, stretch.length());
    Time at = stretch.start();
    boolean struck = false;
    for (Mark mark : stretch.marks()) {
      single(root, at.minus(stretch.start()), mark.at().minus(at), struck);
      at = mark.at();
      struck = true;
    }
    single(root, at.minus(stretch.start()), stretch.end().minus(at), struck);
    return root;
  }

  private static void single(Node root, Time at, Time length, boolean struck) {
    if (length.sign() == 0) {
      return;
    }
    Written.Type unit = Values.notAbove(length);
    Time factor = length.over(unit.length());
    Node only = new Node(new Node.Ratio(factor.den(), factor.num(), unit), unit.length());
    if (struck) {
      only.add(Time.ZERO, null);
    }
    root.add(at, only);
  }
}
