package tabor.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import tabor.emit.engrave.Box;
import tabor.emit.engrave.Contour;
import tabor.emit.engrave.Mark;

/**
 * Draws changed notes hollow: round heads as a ring, all others pale, each in a thin frame, so that
 * a hollow head is not taken for a half note.
 */
final class Hollow {
  /** The heads that are filled and round enough to be made a ring. */
  private static final Set<String> ROUND = Set.of("noteheadBlack", "noteheadDiamondBlack");

  /** How large the hole is, in parts of the head. */
  private static final double HOLE = 0.62;

  private static final double PALE = 0.4;
  private static final double FRAME = 0.1;

  private Hollow() {}

  /** The same marks with the heads of changed notes hollow, and without their tint. */
  static List<Mark> all(List<Mark> marks) {
    List<Mark> drawn = new ArrayList<>();
    for (Mark mark : marks) {
      if (mark instanceof Mark.Group group) {
        boolean head = group.classes().contains("changed") && group.data().containsKey("surface");
        drawn.add(
            new Mark.Group(
                group.classes(), group.data(), head ? hollow(group.marks()) : all(group.marks())));
      } else {
        drawn.add(mark);
      }
    }
    return drawn;
  }

  private static List<Mark> hollow(List<Mark> marks) {
    List<Mark> drawn = new ArrayList<>();
    for (Mark mark : marks) {
      if (mark instanceof Mark.Ink tint) {
        drawn.add(new Mark.Ink(Contour.rounded(tint.outline().bounds(), 0.45, FRAME)));
      } else if (mark instanceof Mark.Glyph glyph && !glyph.sign().name().contains("Parenthesis")) {
        drawn.add(
            ROUND.contains(glyph.sign().name())
                ? new Mark.Ink(ring(glyph))
                : new Mark.Ink(glyph.contour(), PALE));
      } else {
        drawn.add(mark);
      }
    }
    return drawn;
  }

  /** A head with a hole: the same shape, smaller, drawn the other way round. */
  private static Contour ring(Mark.Glyph glyph) {
    Contour outer = glyph.contour();
    Box box = glyph.box();
    double x = (box.left() + box.right()) / 2;
    double y = (box.top() + box.bottom()) / 2;
    Contour.Builder ring = new Contour.Builder();
    outer.draw(ring);
    Reversed inner = new Reversed();
    outer.placed(x - x * HOLE, y - y * HOLE, HOLE, HOLE).draw(inner);
    inner.drawTo(ring);
    return ring.build();
  }

  /** Takes a shape up and draws it backwards. */
  private static final class Reversed implements Contour.Pen {
    private final List<List<double[]>> runs = new ArrayList<>();

    @Override
    public void move(double x, double y) {
      List<double[]> run = new ArrayList<>();
      run.add(new double[] {x, y});
      runs.add(run);
    }

    @Override
    public void line(double x, double y) {
      last().add(new double[] {x, y});
    }

    @Override
    public void curve(double x1, double y1, double x2, double y2, double x, double y) {
      last().add(new double[] {x1, y1, x2, y2, x, y});
    }

    @Override
    public void close() {}

    private List<double[]> last() {
      return runs.get(runs.size() - 1);
    }

    void drawTo(Contour.Pen pen) {
      for (List<double[]> run : runs) {
        double[] end = run.get(run.size() - 1);
        pen.move(end[end.length - 2], end[end.length - 1]);
        for (int i = run.size() - 1; i > 0; i--) {
          double[] piece = run.get(i);
          double[] before = run.get(i - 1);
          double x = before[before.length - 2];
          double y = before[before.length - 1];
          if (piece.length == 2) {
            pen.line(x, y);
          } else {
            pen.curve(piece[2], piece[3], piece[0], piece[1], x, y);
          }
        }
        pen.close();
      }
    }
  }
}
