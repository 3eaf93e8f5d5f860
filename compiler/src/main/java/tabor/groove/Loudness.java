package tabor.groove;

import java.util.Locale;
import java.util.Optional;
import tabor.rhythm.Time;

/** A dynamic mark. */
public enum Loudness {
  PP,
  P,
  MP,
  MF,
  F,
  FF;

  /** {@code mf}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The mark that a word names. */
  public static Optional<Loudness> of(String word) {
    for (Loudness loudness : values()) {
      if (loudness.word().equals(word)) {
        return Optional.of(loudness);
      }
    }
    return Optional.empty();
  }

  /**
   * A mark from here on.
   *
   * @param bar 1-based; 0 is the pickup
   * @param at distance from the barline in whole notes
   * @param loudness the mark
   */
  public record Mark(int bar, Time at, Loudness loudness) {}

  /**
   * A hairpin.
   *
   * @param grows true for a crescendo
   * @param fromBar where it starts, 1-based; 0 is the pickup
   * @param from distance of its start from the barline
   * @param toBar the bar where it ends
   * @param to distance of its end from that bar's line
   * @param target the loudness from its end on
   */
  public record Hairpin(
      boolean grows, int fromBar, Time from, int toBar, Time to, Loudness target) {}
}
