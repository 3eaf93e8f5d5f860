package tabor.syntax;

import org.jspecify.annotations.Nullable;
import tabor.rhythm.Count;
import tabor.source.Span;

/**
 * A count, such as {@code 3&.2/4}, in its parts.
 *
 * @param count the parts; without a syllable where a word stands in its place
 * @param word what stands after the number where it is none of our own syllables, such as {@code
 *     trip}: what it means is for the header to say; else null
 * @param span where
 */
public record CountRef(Count count, @Nullable String word, Span span) {
  /** A count with our own syllables. */
  public CountRef(Count count, Span span) {
    this(count, null, span);
  }

  /** As it is written. */
  public String words() {
    if (word == null) {
      return count.toString();
    }
    String beat = Integer.toString(count.beat());
    return beat + word + count.toString().substring(beat.length());
  }
}
