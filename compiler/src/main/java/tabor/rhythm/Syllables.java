package tabor.rhythm;

import java.util.Optional;
import tabor.rhythm.Count.Syllable;

/**
 * Which syllable a slot of a divided beat is counted with (common practice, no source). The one
 * table that reading and naming a count share.
 */
public final class Syllables {
  private Syllables() {}

  /**
   * The syllable of a slot.
   *
   * @param slots into how many equal slots the beat is divided, 1 or more
   * @param dotted true if the beat is a dotted note value
   * @param index 0-based slot
   * @return {@link Syllable#NONE} for the beat itself, empty where the slot is only numbered
   */
  public static Optional<Syllable> at(int slots, boolean dotted, int index) {
    for (Syllable syllable : Syllable.values()) {
      if (slot(slots, dotted, syllable) == index) {
        return Optional.of(syllable);
      }
    }
    return Optional.empty();
  }

  /**
   * The 0-based slot that a syllable names where the beat is divided in {@code slots}; -1 if that
   * division does not have the syllable.
   */
  public static int slot(int slots, boolean dotted, Syllable syllable) {
    int parts = parts(slots, dotted);
    int step = slots / parts;
    return switch (syllable) {
      case NONE -> 0;
      case E -> parts == 4 ? step : -1;
      case AND -> parts == 4 ? 2 * step : parts > 1 ? step : -1;
      case A -> parts == 4 ? 3 * step : parts == 3 ? 2 * step : -1;
    };
  }

  /** Into how many counted parts the beat falls: 4, 3, 2, or 1 where only the beat has a name. */
  public static int parts(int slots, boolean dotted) {
    if (dotted) {
      return slots % 3 == 0 ? 3 : slots % 4 == 0 ? 4 : slots == 2 ? 2 : 1;
    }
    return slots == 3 || slots == 9 ? 3 : slots % 4 == 0 ? 4 : slots % 2 == 0 ? 2 : 1;
  }
}
