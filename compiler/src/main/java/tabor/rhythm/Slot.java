package tabor.rhythm;

import java.util.List;

/**
 * The place of a stroke in its word.
 *
 * @param division the word
 * @param index the 0-based top-level slot
 * @param parts the way down through groups, outermost first; empty for a stroke that has its slot
 *     to itself
 */
public record Slot(Division division, int index, List<Part> parts) {
  /** One step down: the {@code index}-th (0-based) of {@code of} equal places. */
  public record Part(int index, int of) {
    /** Throws {@link IllegalArgumentException} for a number out of range. */
    public Part {
      if (of < 1 || index < 0 || index >= of) {
        throw new IllegalArgumentException("part " + index + " of " + of);
      }
    }
  }

  /** Throws {@link IllegalArgumentException} for an index out of range. */
  public Slot {
    parts = List.copyOf(parts);
    if (index < 0 || index >= division.slots()) {
      throw new IllegalArgumentException("slot " + index + " of " + division.slots());
    }
  }

  /** Length of the whole word in whole notes. */
  public Time wordLength(Meter meter) {
    Time sum = Time.ZERO;
    for (int i = 0; i < division.beats(); i++) {
      sum = sum.plus(meter.beat(division.beat() + i));
    }
    return sum;
  }

  /** Distance of the top-level slot from the barline. */
  public Time start(Meter meter) {
    return meter
        .beatStart(division.beat())
        .plus(wordLength(meter).times(index).over(division.slots()));
  }

  /** Length of the top-level slot in whole notes. */
  public Time length(Meter meter) {
    return wordLength(meter).over(division.slots());
  }

  /** Distance of the place of a stroke, down through its groups, from the barline. */
  public Time place(Meter meter) {
    Time place = start(meter);
    Time length = length(meter);
    for (Part part : parts) {
      length = length.over(part.of());
      place = place.plus(length.times(part.index()));
    }
    return place;
  }

  /** Length of the place of a stroke, down through its groups, in whole notes. */
  public Time placeLength(Meter meter) {
    Time length = length(meter);
    for (Part part : parts) {
      length = length.over(part.of());
    }
    return length;
  }
}
