package tabor.emit.engrave;

import java.util.Set;

/**
 * How a section should be broken into lines.
 *
 * @param barsALine so many bars in each line, or where they cannot fit, fewer, evenly; 0 for as
 *     looks best
 * @param starts numbers of bars that begin a line
 */
public record LineWishes(int barsALine, Set<Integer> starts) {
  /** As looks best. */
  public static final LineWishes NONE = new LineWishes(0, Set.of());

  /** Copies the set; throws {@link IllegalArgumentException} for less than no bars. */
  public LineWishes {
    starts = Set.copyOf(starts);
    if (barsALine < 0) {
      throw new IllegalArgumentException("bars a line " + barsALine);
    }
  }
}
