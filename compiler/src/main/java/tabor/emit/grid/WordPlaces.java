package tabor.emit.grid;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import tabor.rhythm.Meter;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;

/** The places of the bar that belong to a stroke's word. */
final class WordPlaces {
  private WordPlaces() {}

  /** The first slot of the innermost group that a slot stands in: the same for all in its word. */
  static Slot first(Slot slot) {
    int last = slot.parts().size() - 1;
    if (last < 0) {
      return new Slot(slot.division(), 0, List.of());
    }
    List<Slot.Part> parts = new ArrayList<>(slot.parts());
    parts.set(last, new Slot.Part(0, parts.get(last).of()));
    return new Slot(slot.division(), slot.index(), parts);
  }

  /** Every place of the word that a slot stands in, and of the groups around it. */
  static Set<Time> ofWord(Slot slot, Meter meter) {
    Set<Time> places = new TreeSet<>();
    for (int i = 0; i < slot.division().slots(); i++) {
      places.add(new Slot(slot.division(), i, List.of()).start(meter));
    }
    List<Slot.Part> way = new ArrayList<>();
    for (Slot.Part part : slot.parts()) {
      for (int i = 0; i < part.of(); i++) {
        List<Slot.Part> here = new ArrayList<>(way);
        here.add(new Slot.Part(i, part.of()));
        places.add(new Slot(slot.division(), slot.index(), here).place(meter));
      }
      way.add(part);
    }
    return places;
  }

  /** Into how many equal parts of its beat a slot falls; 0 for a word over several beats. */
  static long fineness(Slot slot) {
    if (slot.division().beats() != 1) {
      return 0;
    }
    long parts = slot.division().slots();
    for (Slot.Part part : slot.parts()) {
      parts *= part.of();
    }
    return parts;
  }
}
