package tabor.emit.engrave;

import java.util.Arrays;

/**
 * A filled shape: closed runs of straight lines and cubic curves, filled by the nonzero rule.
 * Immutable. Coordinates are staff spaces; which way y points is the holder's business.
 */
public final class Contour {
  private static final int MOVE = 0;
  private static final int LINE = 1;
  private static final int CURVE = 2;
  private static final int CLOSE = 3;
  private static final int[] TAKES = {2, 2, 6, 0};

  private final byte[] ops;
  private final double[] numbers;

  private Contour(byte[] ops, double[] numbers) {
    this.ops = ops;
    this.numbers = numbers;
  }

  /** Draws a shape, piece by piece. */
  public interface Pen {
    /** Starts a run at a point. */
    void move(double x, double y);

    /** A straight line to a point. */
    void line(double x, double y);

    /** A cubic curve over two control points to a point. */
    void curve(double x1, double y1, double x2, double y2, double x, double y);

    /** Ends a run where it started. */
    void close();
  }

  /** Tells the whole shape to a pen. */
  public void draw(Pen pen) {
    int i = 0;
    for (byte op : ops) {
      double[] n = numbers;
      switch (op) {
        case MOVE -> pen.move(n[i], n[i + 1]);
        case LINE -> pen.line(n[i], n[i + 1]);
        case CURVE -> pen.curve(n[i], n[i + 1], n[i + 2], n[i + 3], n[i + 4], n[i + 5]);
        default -> pen.close();
      }
      i += TAKES[op];
    }
  }

  /** Where the first run starts. */
  public double startX() {
    return numbers[0];
  }

  /** Where the first run starts. */
  public double startY() {
    return numbers[1];
  }

  /** The shape with each point at ({@code dx + kx * x}, {@code dy + ky * y}). */
  public Contour placed(double dx, double dy, double kx, double ky) {
    double[] placed = new double[numbers.length];
    for (int i = 0; i < placed.length; i += 2) {
      placed[i] = dx + kx * numbers[i];
      placed[i + 1] = dy + ky * numbers[i + 1];
    }
    return new Contour(ops, placed);
  }

  /**
   * The box of the shape: exact for straight lines, and for curves the box of points sampled finely
   * enough to be right within a hundredth.
   */
  public Box bounds() {
    if (numbers.length == 0) {
      throw new IllegalStateException("an empty outline has no box");
    }
    Reach extent = new Reach();
    draw(extent);
    return new Box(extent.left, extent.top, extent.right, extent.bottom);
  }

  /**
   * Reads {@code M x y}, {@code L x y}, {@code C x1 y1 x2 y2 x y} and {@code Z}, one space between.
   */
  public static Contour parse(String data) {
    Builder builder = new Builder();
    String[] words = data.split(" ", -1);
    int i = 0;
    while (i < words.length) {
      byte op = (byte) "MLCZ".indexOf(words[i]);
      if (op < 0) {
        throw new IllegalArgumentException("path data: " + words[i]);
      }
      double[] numbers = new double[TAKES[op]];
      for (int k = 0; k < numbers.length; k++) {
        numbers[k] = Double.parseDouble(words[i + 1 + k]);
      }
      builder.add(op, numbers);
      i += 1 + numbers.length;
    }
    return builder.build();
  }

  /** Four corners, each x and y. */
  private static Contour quad(double... corners) {
    return new Contour(new byte[] {MOVE, LINE, LINE, LINE, CLOSE}, corners);
  }

  /** A straight stroke of even thickness with flat ends. */
  public static Contour stroke(double x1, double y1, double x2, double y2, double thickness) {
    double length = Math.sqrt((x2 - x1) * (x2 - x1) + (y2 - y1) * (y2 - y1));
    double nx = -(y2 - y1) / length * thickness / 2;
    double ny = (x2 - x1) / length * thickness / 2;
    return quad(x1 + nx, y1 + ny, x2 + nx, y2 + ny, x2 - nx, y2 - ny, x1 - nx, y1 - ny);
  }

  /** A band between two upright edges, as a beam is: slanted above and below, cut off upright. */
  public static Contour band(double x1, double y1, double x2, double y2, double thickness) {
    double half = thickness / 2;
    return quad(x1, y1 - half, x2, y2 - half, x2, y2 + half, x1, y1 + half);
  }

  /** A rectangle with round corners; with {@code rim} above zero only its rim, so thick. */
  public static Contour rounded(Box box, double radius, double rim) {
    Builder builder = new Builder();
    corners(builder, box, radius, true);
    if (rim > 0) {
      corners(builder, box.grown(-rim), Math.max(radius - rim, 0.01), false);
    }
    return builder.build();
  }

  private static void corners(Builder b, Box box, double r, boolean onward) {
    double k = r * 0.4477; // the control points of a quarter circle stand this far from the corner
    double x0 = box.left();
    double x1 = box.right();
    double y0 = box.top();
    double y1 = box.bottom();
    b.move(x0 + r, y0);
    if (onward) {
      b.line(x1 - r, y0);
      b.curve(x1 - k, y0, x1, y0 + k, x1, y0 + r);
      b.line(x1, y1 - r);
      b.curve(x1, y1 - k, x1 - k, y1, x1 - r, y1);
      b.line(x0 + r, y1);
      b.curve(x0 + k, y1, x0, y1 - k, x0, y1 - r);
      b.line(x0, y0 + r);
      b.curve(x0, y0 + k, x0 + k, y0, x0 + r, y0);
    } else {
      b.curve(x0 + k, y0, x0, y0 + k, x0, y0 + r);
      b.line(x0, y1 - r);
      b.curve(x0, y1 - k, x0 + k, y1, x0 + r, y1);
      b.line(x1 - r, y1);
      b.curve(x1 - k, y1, x1, y1 - k, x1, y1 - r);
      b.line(x1, y0 + r);
      b.curve(x1, y0 + k, x1 - k, y0, x1 - r, y0);
      b.line(x0 + r, y0);
    }
    b.close();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Contour that
        && Arrays.equals(ops, that.ops)
        && Arrays.equals(numbers, that.numbers);
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(ops) + Arrays.hashCode(numbers);
  }

  /** Path data as in the sign resource, three digits after the point. */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder();
    int i = 0;
    for (byte op : ops) {
      text.append(text.isEmpty() ? "" : " ").append("MLCZ".charAt(op));
      for (int k = 0; k < TAKES[op]; k++) {
        text.append(' ').append(Math.round(numbers[i++] * 1000) / 1000.0);
      }
    }
    return text.toString();
  }

  /** Collects a shape. */
  public static final class Builder implements Pen {
    private byte[] ops = new byte[16];
    private double[] numbers = new double[32];
    private int opCount;
    private int numberCount;

    private void add(int op, double... values) {
      if (opCount == ops.length) {
        ops = Arrays.copyOf(ops, opCount * 2);
      }
      ops[opCount++] = (byte) op;
      if (numberCount + values.length > numbers.length) {
        numbers = Arrays.copyOf(numbers, numberCount * 2);
      }
      System.arraycopy(values, 0, numbers, numberCount, values.length);
      numberCount += values.length;
    }

    @Override
    public void move(double x, double y) {
      add(MOVE, x, y);
    }

    @Override
    public void line(double x, double y) {
      add(LINE, x, y);
    }

    @Override
    public void curve(double x1, double y1, double x2, double y2, double x, double y) {
      add(CURVE, x1, y1, x2, y2, x, y);
    }

    @Override
    public void close() {
      add(CLOSE);
    }

    /** What was drawn so far. */
    public Contour build() {
      return new Contour(Arrays.copyOf(ops, opCount), Arrays.copyOf(numbers, numberCount));
    }
  }

  private static final class Reach implements Pen {
    private double left = Double.POSITIVE_INFINITY;
    private double top = Double.POSITIVE_INFINITY;
    private double right = Double.NEGATIVE_INFINITY;
    private double bottom = Double.NEGATIVE_INFINITY;
    private double atX;
    private double atY;

    @Override
    public void move(double x, double y) {
      line(x, y);
    }

    @Override
    public void line(double x, double y) {
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
      atX = x;
      atY = y;
    }

    @Override
    public void curve(double x1, double y1, double x2, double y2, double x, double y) {
      double fromX = atX;
      double fromY = atY;
      for (int i = 1; i <= 16; i++) {
        double t = i / 16.0;
        double u = 1 - t;
        line(
            u * u * u * fromX + 3 * u * u * t * x1 + 3 * u * t * t * x2 + t * t * t * x,
            u * u * u * fromY + 3 * u * u * t * y1 + 3 * u * t * t * y2 + t * t * t * y);
      }
    }

    @Override
    public void close() {}
  }
}
