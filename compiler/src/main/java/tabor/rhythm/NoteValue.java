package tabor.rhythm;

import java.util.Locale;
import java.util.Optional;

/** The note values that a pattern is played in and a part is shifted by. */
public enum NoteValue {
  HALVES(1, 2),
  QUARTERS(1, 4),
  EIGHTHS(1, 8),
  SIXTEENTHS(1, 16),
  THIRTY_SECONDS(1, 32),
  /** Three in a half note. */
  QUARTER_TRIPLETS(1, 6),
  /** Eighth-note triplets, three in a quarter. */
  TRIPLETS(1, 12),
  /** Six in a quarter. */
  SIXTEENTH_TRIPLETS(1, 24),
  /** Five in a quarter. */
  QUINTUPLETS(1, 20),
  /** Seven in a quarter. */
  SEPTUPLETS(1, 28);

  private final long num;
  private final long den;

  NoteValue(long num, long den) {
    this.num = num;
    this.den = den;
  }

  /** Length of one, in whole notes. */
  public Time length() {
    return Time.of(num, den);
  }

  /** The plural as written: {@code thirty-seconds}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The singular as written: {@code thirty-second}. */
  public String singular() {
    return this == HALVES ? "half" : word().substring(0, word().length() - 1);
  }

  /** The value that this word names, singular or plural. */
  public static Optional<NoteValue> of(String word) {
    for (NoteValue value : values()) {
      if (value.word().equals(word) || value.singular().equals(word)) {
        return Optional.of(value);
      }
    }
    return Optional.empty();
  }
}
