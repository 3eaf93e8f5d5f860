package tabor.notation;

import tabor.rhythm.Time;

/**
 * A note value as it is drawn.
 *
 * @param type what head, stem and flags say
 * @param dots 0 or 1
 */
public record Written(Type type, int dots) {
  /** Undotted note values, longest first. */
  public enum Type {
    BREVE(2, 1),
    WHOLE(1, 1),
    HALF(1, 2),
    QUARTER(1, 4),
    EIGHTH(1, 8),
    SIXTEENTH(1, 16),
    THIRTY_SECOND(1, 32),
    SIXTY_FOURTH(1, 64),
    HUNDRED_TWENTY_EIGHTH(1, 128),
    TWO_HUNDRED_FIFTY_SIXTH(1, 256),
    FIVE_HUNDRED_TWELFTH(1, 512),
    THOUSAND_TWENTY_FOURTH(1, 1024);

    private final long num;
    private final long den;

    Type(long num, long den) {
      this.num = num;
      this.den = den;
    }

    /** Its length in whole notes. */
    public Time length() {
      return Time.of(num, den);
    }

    /** Its part of a whole note in figures: {@code 16th}, {@code 32nd}. */
    public String part() {
      return den + (this == THIRTY_SECOND ? "nd" : "th");
    }

    /** How many flags or beams it has: 0 from the quarter up, 1 for the eighth … */
    public int flags() {
      return Math.max(0, ordinal() - QUARTER.ordinal());
    }

    /** True if it has a stem. */
    public boolean hasStem() {
      return this != BREVE && this != WHOLE;
    }

    /** True if its head is filled, where heads can be. */
    public boolean isFilled() {
      return compareTo(QUARTER) >= 0;
    }
  }

  /** Throws {@link IllegalArgumentException} for more than one dot. */
  public Written {
    if (dots < 0 || dots > 1) {
      throw new IllegalArgumentException("dots " + dots);
    }
  }

  /** Its length in whole notes, outside tuplets. */
  public Time length() {
    return dots == 0 ? type.length() : type.length().times(3).over(2);
  }
}
