package tabor.emit.grid;

import java.util.ArrayList;
import java.util.List;
import tabor.groove.CountLabels;
import tabor.groove.Groove;
import tabor.groove.Loudness;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;
import tabor.words.Words;

/** Dynamic marks and hairpins in words: {@code p on 1 of bar 1}. */
final class DynamicWords {
  private DynamicWords() {}

  static List<String> of(Groove groove, Words words) {
    List<String> said = new ArrayList<>();
    for (Loudness.Mark mark : groove.marks()) {
      said.add(
          words.text(
              "dynamic.from", mark.loudness().word(), place(groove, mark.bar(), mark.at(), words)));
    }
    for (Loudness.Hairpin hairpin : groove.hairpins()) {
      said.add(
          words.text(
              hairpin.grows() ? "dynamic.crescendo" : "dynamic.diminuendo",
              place(groove, hairpin.fromBar(), hairpin.from(), words),
              hairpin.target().word(),
              place(groove, hairpin.toBar(), hairpin.to(), words)));
    }
    return said;
  }

  private static String place(Groove groove, int bar, Time at, Words words) {
    // A hairpin may end on the barline.
    Meter meter = groove.meter(bar);
    boolean atEnd = !at.before(meter.bar());
    String count = atEnd ? words.text("dynamic.end") : CountLabels.of(groove).full(at, meter);
    return groove.bars() == 1 && bar == 1 ? count : words.text("dynamic.of-bar", count, bar);
  }
}
