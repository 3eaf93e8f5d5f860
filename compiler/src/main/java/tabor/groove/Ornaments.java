package tabor.groove;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * An immutable set of ornaments.
 *
 * @param bits one bit for each {@link Ornament}, by its place in the enum
 */
public record Ornaments(int bits) {
  /** No ornament. */
  public static final Ornaments NONE = new Ornaments(0);

  /** True if {@code ornament} is in the set. */
  public boolean has(Ornament ornament) {
    return (bits & (1 << ornament.ordinal())) != 0;
  }

  /** True for the empty set. */
  public boolean isEmpty() {
    return bits == 0;
  }

  /** This set with one more, which takes the place of those that it excludes. */
  public Ornaments with(Ornament ornament) {
    Ornaments kept = this;
    for (Ornament other : list()) {
      if (ornament.excludes(other)) {
        kept = kept.without(other);
      }
    }
    return new Ornaments(kept.bits | (1 << ornament.ordinal()));
  }

  /** This set with one less. */
  public Ornaments without(Ornament ornament) {
    return new Ornaments(bits & ~(1 << ornament.ordinal()));
  }

  /** The ornaments in order. */
  public List<Ornament> list() {
    if (bits == 0) {
      return List.of();
    }
    List<Ornament> found = new ArrayList<>();
    for (Ornament ornament : Ornament.values()) {
      if (has(ornament)) {
        found.add(ornament);
      }
    }
    return found;
  }

  /** How many grace notes come before the main stroke: 0 to 3. */
  public int graceNotes() {
    int most = 0;
    for (Ornament ornament : list()) {
      most = Math.max(most, ornament.graceNotes());
    }
    return most;
  }

  /** True if one of them fills the slot and goes on while the stroke is held. */
  public boolean isRolled() {
    for (Ornament ornament : list()) {
      if (ornament.isRoll()) {
        return true;
      }
    }
    return false;
  }

  /** {@code flam,buzz}, or {@code -} for none. */
  @Override
  public String toString() {
    return isEmpty() ? "-" : list().stream().map(Ornament::word).collect(Collectors.joining(","));
  }
}
