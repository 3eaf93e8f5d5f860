package tabor.rhythm;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tabor.rhythm.Count.Syllable;

/**
 * Names a place of the bar as it is counted aloud. What comes out can be written after {@code at}
 * and means the same place again.
 */
public final class CountNames {
  private CountNames() {}

  /**
   * The count of a stroke, by its own word: {@code 2&}, {@code 3.5}, {@code 3&.2} for the second
   * place of a group. The first place of a group is called by its slot alone.
   */
  public static Count of(Slot slot, Meter meter) {
    Count top = of(slot.division(), slot.start(meter), meter);
    int last = slot.parts().size();
    while (last > 0 && slot.parts().get(last - 1).index() == 0) {
      last--;
    }
    if (last == 0 || top.division() != 0) {
      return top;
    }
    List<Integer> places = new ArrayList<>(top.places());
    if (top.syllable() == Syllable.NONE && places.isEmpty()) {
      places.add(1);
    }
    for (Slot.Part part : slot.parts().subList(0, last)) {
      places.add(part.index() + 1);
    }
    return new Count(top.beat(), top.syllable(), places, 0);
  }

  /**
   * The count of a place, read by a division.
   *
   * @param division how the stroke's word is divided; where the place is not one of its slots, the
   *     plain reading is tried and then the division is named
   * @param at distance from the barline in whole notes, 0 or more and less than the bar
   */
  public static Count of(Division division, Time at, Meter meter) {
    int beat = meter.beatAt(at);
    if (division.beats() == 1 && division.beat() == beat) {
      Time index = at.minus(meter.beatStart(beat)).over(meter.beat(beat)).times(division.slots());
      if (index.isWhole()) {
        return numbered(meter, beat, division.slots(), (int) index.num(), 0);
      }
    }
    Count plain = of(at, meter);
    if (division.beats() == 1 || plain.division() == 0) {
      return plain;
    }
    Time start = meter.beatStart(division.beat());
    Time length = meter.beatStart(division.beat() + division.beats()).minus(start);
    Time index = at.minus(start).over(length).times(division.slots());
    return index.isWhole() && index.sign() >= 0 && index.num() < division.slots()
        ? new Count(division.beat() + 1, Syllable.NONE, List.of((int) index.num() + 1), 0)
        : plain;
  }

  /**
   * The count of a place where no stroke is meant: {@code &} the half, {@code e} and {@code a} the
   * quarters, in a dotted beat {@code &} and {@code a} the thirds; elsewhere with the division
   * named, such as {@code 1a/3} or {@code 2.3/5}.
   *
   * @param at distance from the barline in whole notes, 0 or more and less than the bar
   */
  public static Count of(Time at, Meter meter) {
    int beat = meter.beatAt(at);
    Time part = at.minus(meter.beatStart(beat)).over(meter.beat(beat));
    int slots = (int) part.den();
    boolean plain = Meter.isDotted(meter.beat(beat)) ? slots == 3 : slots == 2 || slots == 4;
    return numbered(meter, beat, slots, (int) part.num(), plain || slots == 1 ? 0 : slots);
  }

  private static Count numbered(Meter meter, int beat, int slots, int index, int named) {
    boolean dotted = Meter.isDotted(meter.beat(beat));
    Optional<Syllable> syllable = Syllables.at(slots, dotted, index);
    return syllable.isPresent()
        ? new Count(beat + 1, syllable.get(), List.of(), named)
        : new Count(beat + 1, Syllable.NONE, List.of(index + 1), named);
  }
}
