package tabor.emit.engrave;

/**
 * A rectangle in staff spaces, x to the right and y downwards.
 *
 * @param left its left edge
 * @param top its upper edge
 * @param right its right edge, not left of the left one
 * @param bottom its lower edge, not above the upper one
 */
public record Box(double left, double top, double right, double bottom) {
  /** Throws {@link IllegalArgumentException} for edges in the wrong order. */
  public Box {
    if (!(left <= right && top <= bottom)) {
      throw new IllegalArgumentException("box " + left + " " + top + " " + right + " " + bottom);
    }
  }

  /** From edge to edge. */
  public double width() {
    return right - left;
  }

  /** From edge to edge. */
  public double height() {
    return bottom - top;
  }

  /** The smallest box that holds both. */
  public Box union(Box other) {
    return new Box(
        Math.min(left, other.left),
        Math.min(top, other.top),
        Math.max(right, other.right),
        Math.max(bottom, other.bottom));
  }

  /** This box with {@code by} more on each side. */
  public Box grown(double by) {
    return new Box(left - by, top - by, right + by, bottom + by);
  }
}
