package tabor.find;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.rhythm.Time;

/**
 * What somebody looks for. A section must have all of it; what is empty or null is not asked.
 *
 * @param rudiments that the hands play, by the names that {@link tabor.body.RudimentFinder} gives
 * @param surfaces that are struck: {@code hihat.open}, or {@code hihat} for the piece in any way
 * @param like a pattern that it is like; null for any
 * @param tempo where its tempo lies; null for anywhere
 * @param meter a signature that one of its bars has, such as {@code 7/8}; null for any
 * @param harderThan its {@link tabor.body.Difficulty#share} lies above that; null for any
 * @param words that stand in its texts or those of its lesson, in lower case
 */
public record Wanted(
    List<String> rudiments,
    List<String> surfaces,
    @Nullable Like like,
    @Nullable Range tempo,
    @Nullable String meter,
    @Nullable Long harderThan,
    List<String> words) {
  /** Copies the lists. */
  public Wanted {
    rudiments = List.copyOf(rudiments);
    surfaces = List.copyOf(surfaces);
    words = List.copyOf(words);
  }

  /**
   * A pattern that others are compared with.
   *
   * @param groove whose kick or hands
   * @param upTo by how many strokes another may differ, 0 or more
   */
  public record Like(Groove groove, int upTo) {}

  /**
   * Beats per minute, each section in its own counted value.
   *
   * @param from the lowest that fits
   * @param to the highest that fits, not below {@code from}
   */
  public record Range(Time from, Time to) {
    /** Throws {@link IllegalArgumentException} for a range the wrong way round. */
    public Range {
      if (to.before(from)) {
        throw new IllegalArgumentException(from + " to " + to);
      }
    }

    boolean has(Time perMinute) {
      return !perMinute.before(from) && !to.before(perMinute);
    }
  }
}
