package tabor.source;

/**
 * A half-open range of UTF-16 offsets, {@code start} included and {@code end} not. What the offsets
 * count from is said where the span is kept: a line, a passage or a file.
 *
 * @param start first offset, 0 or more
 * @param end offset after the last, {@code start} or more
 */
public record Span(int start, int end) {
  /** Throws {@link IllegalArgumentException} for a negative or turned range. */
  public Span {
    if (start < 0 || end < start) {
      throw new IllegalArgumentException("not a range: " + start + ".." + end);
    }
  }

  /** Length in UTF-16 units, 0 for a bare place between two characters. */
  public int length() {
    return end - start;
  }

  /** The same range, counted from a point {@code by} units earlier. */
  public Span shift(int by) {
    return new Span(start + by, end + by);
  }

  /** The smallest range that holds both. */
  public Span to(Span other) {
    return new Span(Math.min(start, other.start), Math.max(end, other.end));
  }

  /** True if {@code offset} lies in the range or right at its end, as a cursor does. */
  public boolean touches(int offset) {
    return start <= offset && offset <= end;
  }

  /** True if another range lies within this one; both may be the same. */
  public boolean holds(Span other) {
    return start <= other.start && other.end <= end;
  }

  /** The text that this range covers. */
  public String in(String text) {
    return text.substring(start, end);
  }
}
