package tabor.timbre;

import java.util.List;
import java.util.Locale;

/**
 * One layer of a timbre. Frequencies in hertz, times in seconds, gains as amplitude.
 *
 * @param edge false for a layer of the body, which every stroke has; true for one of the edge,
 *     whose amplitude also grows with the velocity
 * @param kind how it is made
 * @param figures as many as the kind takes
 */
public record TimbreLayer(boolean edge, Kind kind, List<Double> figures) {
  /** How a layer is made; the figures of each kind stand in its order. */
  public enum Kind {
    /** A decaying sine: frequency, gain, time in which it falls to 37 %. */
    MODE(3, 3),
    /** A struck skin: frequency, frequency at the stroke, time of the glide, gain, decay, drive. */
    SKIN(5, 6),
    /** Filtered noise: low edge, high edge, gain, decay, attack, delay. */
    NOISE(4, 6),
    /** Many modes without harmony: lowest, highest, how many, gain, decay of the lowest, slope. */
    PLATE(6, 6);

    private final int least;
    private final int most;

    Kind(int least, int most) {
      this.least = least;
      this.most = most;
    }

    /** As the table names it. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** Copies the figures; throws {@link IllegalArgumentException} for too few or too many. */
  public TimbreLayer {
    figures = List.copyOf(figures);
    if (figures.size() < kind.least || figures.size() > kind.most) {
      throw new IllegalArgumentException(kind.word() + " takes other figures than " + figures);
    }
  }

  /** A figure, or a usual value where the table leaves it out. */
  public double figure(int index, double usual) {
    return index < figures.size() ? figures.get(index) : usual;
  }
}
