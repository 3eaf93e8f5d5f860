package tabor.emit.html;

import java.util.ArrayList;
import java.util.List;
import tabor.emit.engrave.Contour;

/**
 * An outline as path data that begins at its own first point, so that equal shapes have equal data
 * wherever they stand. Lengths in user units, ten a staff space.
 *
 * @param x where it begins
 * @param y where it begins
 * @param data relative path data, rounded to hundredths, each point from its exact value
 * @param isSimple true for one run of straight lines: a stem, a beam, a barline
 */
record LocalPath(double x, double y, String data, boolean isSimple) {
  /** User units a staff space: browsers set type below one unit badly. */
  static final int UNIT = 10;

  static LocalPath of(Contour outline) {
    Tracer tracer = new Tracer();
    outline.draw(tracer);
    return tracer.path();
  }

  /** A number of so many hundredths, as short as it can be written. */
  static String hundredths(long value) {
    if (value % 100 == 0) {
      return Long.toString(value / 100);
    }
    long size = Math.abs(value);
    String digits =
        size % 10 == 0 ? "" + size % 100 / 10 : (size % 100 < 10 ? "0" : "") + size % 100;
    return (value < 0 ? "-" : "") + (size >= 100 ? size / 100 : "") + "." + digits;
  }

  /** A place, to a tenth of a user unit. */
  static String tenths(double value) {
    return hundredths(Math.round(value * 10) * 10);
  }

  /** Appends a number to a row of numbers; a minus sign parts it by itself. */
  private static void add(StringBuilder out, long value) {
    String text = hundredths(value);
    char last = out.charAt(out.length() - 1);
    if (text.charAt(0) != '-' && (Character.isDigit(last) || last == '.')) {
      out.append(' ');
    }
    out.append(text);
  }

  /** Traces an outline, first as points. */
  private static final class Tracer implements Contour.Pen {
    /** A run's first point, or a step to a further one with its control points before it. */
    private record Step(char kind, long... points) {}

    private final List<Step> steps = new ArrayList<>();
    private double startX;
    private double startY;
    private boolean started;

    private long x(double x) {
      return Math.round((x - startX) * UNIT * 100);
    }

    private long y(double y) {
      return Math.round((y - startY) * UNIT * 100);
    }

    @Override
    public void move(double x, double y) {
      if (!started) {
        started = true;
        startX = x;
        startY = y;
      }
      steps.add(new Step('m', x(x), y(y)));
    }

    @Override
    public void line(double x, double y) {
      steps.add(new Step('l', x(x), y(y)));
    }

    @Override
    public void curve(double x1, double y1, double x2, double y2, double x, double y) {
      steps.add(new Step('c', x(x1), y(y1), x(x2), y(y2), x(x), y(y)));
    }

    @Override
    public void close() {
      steps.add(new Step('z'));
    }

    LocalPath path() {
      boolean simple =
          steps.stream().noneMatch(s -> s.kind == 'c')
              && steps.stream().filter(s -> s.kind == 'm').count() == 1;
      return new LocalPath(
          startX * UNIT, startY * UNIT, data(simple && area() < 0 ? turned() : steps), simple);
    }

    /** Twice the signed area of the points of a single run. */
    private long area() {
      long sum = 0;
      List<Step> points = steps.stream().filter(s -> s.kind != 'z').toList();
      for (int i = 0; i < points.size(); i++) {
        long[] here = points.get(i).points;
        long[] next = points.get((i + 1) % points.size()).points;
        sum += here[0] * next[1] - next[0] * here[1];
      }
      return sum;
    }

    /**
     * The same single run the other way round. Runs of one direction may overlap in one path: the
     * nonzero rule fills them all.
     */
    private List<Step> turned() {
      List<Step> points = new ArrayList<>(steps.stream().filter(s -> s.kind != 'z').toList());
      List<Step> back = new ArrayList<>(List.of(points.get(0)));
      for (int i = points.size() - 1; i > 0; i--) {
        back.add(new Step('l', points.get(i).points));
      }
      back.add(new Step('z'));
      return back;
    }

    private static String data(List<Step> steps) {
      StringBuilder out = new StringBuilder();
      long x = 0;
      long y = 0;
      long runX = 0;
      long runY = 0;
      for (Step step : steps) {
        long[] p = step.points;
        if (step.kind == 'z') {
          out.append('z');
          x = runX;
          y = runY;
          continue;
        }
        long dx = p[p.length - 2] - x;
        long dy = p[p.length - 1] - y;
        if (step.kind == 'l' && dy == 0) {
          out.append('h');
          add(out, dx);
        } else if (step.kind == 'l' && dx == 0) {
          out.append('v');
          add(out, dy);
        } else {
          out.append(step.kind);
          for (int i = 0; i < p.length; i += 2) {
            add(out, p[i] - x);
            add(out, p[i + 1] - y);
          }
        }
        x += dx;
        y += dy;
        if (step.kind == 'm') {
          runX = x;
          runY = y;
        }
      }
      return out.toString();
    }
  }
}
