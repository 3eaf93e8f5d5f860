package tabor.rhythm;

import java.util.Locale;
import java.util.Optional;

/** The note values that a tempo counts. */
public enum BeatUnit {
  HALF(1, 2),
  QUARTER(1, 4),
  EIGHTH(1, 8),
  SIXTEENTH(1, 16),
  DOTTED_HALF(3, 4),
  DOTTED_QUARTER(3, 8),
  DOTTED_EIGHTH(3, 16),
  DOTTED_SIXTEENTH(3, 32);

  private final long num;
  private final long den;

  BeatUnit(long num, long den) {
    this.num = num;
    this.den = den;
  }

  /** Its length in whole notes. */
  public Time length() {
    return Time.of(num, den);
  }

  /** As written: {@code dotted-quarter}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The value that a word names. */
  public static Optional<BeatUnit> of(String word) {
    for (BeatUnit unit : values()) {
      if (unit.word().equals(word)) {
        return Optional.of(unit);
      }
    }
    return Optional.empty();
  }
}
