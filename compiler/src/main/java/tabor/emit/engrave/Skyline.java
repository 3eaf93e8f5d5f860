package tabor.emit.engrave;

import java.util.Arrays;

/**
 * How far the drawing reaches away from the staff at each x, so that the next sign finds free room.
 * Kept in strips a quarter of a space wide; y is counted away from the staff.
 */
final class Skyline {
  private static final double STRIP = 0.25;

  private final double[] reach;
  private double most;

  /** A skyline over a width that reaches {@code start} everywhere. */
  Skyline(double width, double start) {
    reach = new double[(int) Math.ceil(width / STRIP) + 8];
    Arrays.fill(reach, start);
    most = start;
  }

  /** The farthest reach between two places. */
  double reach(double left, double right) {
    double far = Double.NEGATIVE_INFINITY;
    for (int i = strip(left); i <= strip(right); i++) {
      far = Math.max(far, reach[i]);
    }
    return far;
  }

  /** Something reaches as far as {@code to} between two places. */
  void raise(double left, double right, double to) {
    for (int i = strip(left); i <= strip(right); i++) {
      reach[i] = Math.max(reach[i], to);
    }
    most = Math.max(most, to);
  }

  /** The farthest reach of all. */
  double most() {
    return most;
  }

  private int strip(double x) {
    return Math.min(reach.length - 1, Math.max(0, (int) Math.floor(x / STRIP) + 2));
  }
}
