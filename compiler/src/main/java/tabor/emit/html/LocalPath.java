package tabor.emit.html;

import java.util.Arrays;
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

  /** The same shape from another point. */
  LocalPath at(double otherX, double otherY) {
    return new LocalPath(otherX, otherY, data, isSimple);
  }

  /** A number of so many hundredths, as short as it can be written. */
  static String hundredths(long value) {
    StringBuilder text = new StringBuilder();
    hundredths(text, value);
    return text.toString();
  }

  private static void hundredths(StringBuilder out, long value) {
    int size = Math.toIntExact(Math.abs(value));
    if (value < 0) {
      out.append('-');
    }
    if (size >= 100 || size == 0) {
      out.append(size / 100);
    }
    int rest = size % 100;
    if (rest != 0) {
      out.append('.').append((char) ('0' + rest / 10));
      if (rest % 10 != 0) {
        out.append((char) ('0' + rest % 10));
      }
    }
  }

  /** A place, to a tenth of a user unit. */
  static String tenths(double value) {
    return hundredths(Math.round(value * 10) * 10);
  }

  /** Appends a number to a row of numbers; a minus sign parts it by itself. */
  private static void add(StringBuilder out, long value) {
    char last = out.charAt(out.length() - 1);
    if (value >= 0 && ((last >= '0' && last <= '9') || last == '.')) {
      out.append(' ');
    }
    hundredths(out, value);
  }

  /** Traces an outline, first as points. */
  private static final class Tracer implements Contour.Pen {
    /** A letter for each step: {@code m}, {@code l}, {@code c} or {@code z}. */
    private final StringBuilder kinds = new StringBuilder();

    /** The points of all steps, x and y in turn; a curve's control points before its own. */
    private long[] points = new long[32];

    private int count;
    private double startX;
    private double startY;

    private void point(double x, double y) {
      if (count == points.length) {
        points = Arrays.copyOf(points, count * 2);
      }
      points[count++] = Math.round((x - startX) * UNIT * 100);
      points[count++] = Math.round((y - startY) * UNIT * 100);
    }

    @Override
    public void move(double x, double y) {
      if (kinds.isEmpty()) {
        startX = x;
        startY = y;
      }
      kinds.append('m');
      point(x, y);
    }

    @Override
    public void line(double x, double y) {
      kinds.append('l');
      point(x, y);
    }

    @Override
    public void curve(double x1, double y1, double x2, double y2, double x, double y) {
      kinds.append('c');
      point(x1, y1);
      point(x2, y2);
      point(x, y);
    }

    @Override
    public void close() {
      kinds.append('z');
    }

    LocalPath path() {
      boolean simple = kinds.indexOf("c") < 0 && kinds.lastIndexOf("m") == 0;
      if (simple && area() < 0) {
        turn();
      }
      return new LocalPath(startX * UNIT, startY * UNIT, data(), simple);
    }

    /** Twice the signed area of the points of a single run. */
    private long area() {
      long sum = 0;
      for (int i = 0; i < count; i += 2) {
        int next = i + 2 < count ? i + 2 : 0;
        sum += points[i] * points[next + 1] - points[next] * points[i + 1];
      }
      return sum;
    }

    /**
     * Makes the same single run go the other way round. Runs of one direction may overlap in one
     * path: the nonzero rule fills them all.
     */
    private void turn() {
      for (int low = 2, high = count - 2; low < high; low += 2, high -= 2) {
        for (int i = 0; i < 2; i++) {
          long kept = points[low + i];
          points[low + i] = points[high + i];
          points[high + i] = kept;
        }
      }
      if (kinds.charAt(kinds.length() - 1) != 'z') {
        kinds.append('z');
      }
    }

    private String data() {
      StringBuilder out = new StringBuilder();
      long x = 0;
      long y = 0;
      long runX = 0;
      long runY = 0;
      int at = 0;
      for (int step = 0; step < kinds.length(); step++) {
        char kind = kinds.charAt(step);
        if (kind == 'z') {
          out.append('z');
          x = runX;
          y = runY;
          continue;
        }
        int end = at + (kind == 'c' ? 6 : 2);
        long dx = points[end - 2] - x;
        long dy = points[end - 1] - y;
        if (kind == 'l' && dy == 0) {
          out.append('h');
          add(out, dx);
        } else if (kind == 'l' && dx == 0) {
          out.append('v');
          add(out, dy);
        } else {
          out.append(kind);
          for (int i = at; i < end; i += 2) {
            add(out, points[i] - x);
            add(out, points[i + 1] - y);
          }
        }
        at = end;
        x += dx;
        y += dy;
        if (kind == 'm') {
          runX = x;
          runY = y;
        }
      }
      return out.toString();
    }
  }
}
