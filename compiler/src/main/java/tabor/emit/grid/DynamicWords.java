package tabor.emit.grid;

import java.util.ArrayList;
import java.util.List;
import tabor.groove.CountLabels;
import tabor.groove.Groove;
import tabor.groove.Loudness;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/** Dynamic marks and hairpins in words: {@code p on 1 of bar 1}. */
final class DynamicWords {
  private DynamicWords() {}

  static List<String> of(Groove groove) {
    List<String> words = new ArrayList<>();
    for (Loudness.Mark mark : groove.marks()) {
      words.add(mark.loudness().word() + " from " + place(groove, mark.bar(), mark.at()));
    }
    for (Loudness.Hairpin hairpin : groove.hairpins()) {
      words.add(
          (hairpin.grows() ? "crescendo" : "diminuendo")
              + " from "
              + place(groove, hairpin.fromBar(), hairpin.from())
              + " to "
              + hairpin.target().word()
              + " at "
              + place(groove, hairpin.toBar(), hairpin.to()));
    }
    return words;
  }

  private static String place(Groove groove, int bar, Time at) {
    // A hairpin may end on the barline.
    Meter meter = groove.meter(bar);
    boolean atEnd = !at.before(meter.bar());
    String count = atEnd ? "the end" : CountLabels.of(groove).full(at, meter);
    return groove.bars() == 1 && bar == 1 ? count : count + " of bar " + bar;
  }
}
