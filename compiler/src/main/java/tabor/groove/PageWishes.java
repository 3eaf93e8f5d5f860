package tabor.groove;

import org.jspecify.annotations.Nullable;

/**
 * How a page is to be laid out, as far as the writer says so. The header's hold for the whole
 * lesson, a section's for it and the steps and sheets derived from it, a player's for that student;
 * of each kind the innermost counts.
 *
 * @param paper the paper; null where nothing is said
 * @param large true for large print
 * @param barsPerLine bars in a row, 1 to 16; null for as many as fit
 * @param columns sections side by side, 1 to 3; null for as many as fit
 */
public record PageWishes(
    @Nullable Paper paper,
    boolean large,
    @Nullable Integer barsPerLine,
    @Nullable Integer columns) {
  /** Nothing is said. */
  public static final PageWishes NONE = new PageWishes(null, false, null, null);

  /** Papers. */
  public enum Paper {
    A4,
    LETTER
  }

  /** Checks the ranges. */
  public PageWishes {
    if (barsPerLine != null && (barsPerLine < 1 || barsPerLine > 16)) {
      throw new IllegalArgumentException(barsPerLine + " bars a line");
    }
    if (columns != null && (columns < 1 || columns > 3)) {
      throw new IllegalArgumentException(columns + " columns");
    }
  }

  /** These wishes, and of each kind on which they are silent those of {@code outer}. */
  public PageWishes over(PageWishes outer) {
    return new PageWishes(
        paper == null ? outer.paper : paper,
        large || outer.large,
        barsPerLine == null ? outer.barsPerLine : barsPerLine,
        columns == null ? outer.columns : columns);
  }
}
