package tabor.rhythm;

/**
 * Where off-beats sound. The page is unchanged by it.
 *
 * @param unit what is swung
 * @param share the part of the pair that the first of the two takes, between 0 and 1 exclusive; a
 *     half is straight
 */
public record Feel(Unit unit, Time share) {
  /** Off-beats where they are written. */
  public static final Feel STRAIGHT = new Feel(Unit.EIGHTHS, Time.of(1, 2));

  /** What is swung: the halves of a beat, or the halves of each half. */
  public enum Unit {
    /** The halves of a beat. */
    EIGHTHS,
    /** The halves of each half beat. */
    SIXTEENTHS
  }

  /** Throws {@link IllegalArgumentException} unless the share lies inside the pair. */
  public Feel {
    if (share.sign() <= 0 || share.compareTo(Time.ONE) >= 0) {
      throw new IllegalArgumentException("share " + share);
    }
  }

  /** True if nothing is swung. */
  public boolean isStraight() {
    return share.equals(Time.of(1, 2));
  }

  /** {@code straight}, {@code swing eighths 62%} or {@code swing eighths as triplets}. */
  public String words() {
    if (isStraight()) {
      return "straight";
    }
    String what =
        switch (unit) {
          case EIGHTHS -> "eighths";
          case SIXTEENTHS -> "sixteenths";
        };
    return share.equals(Time.of(2, 3))
        ? "swing " + what + " as triplets"
        : "swing " + what + " " + share.times(100).decimal() + "%";
  }
}
