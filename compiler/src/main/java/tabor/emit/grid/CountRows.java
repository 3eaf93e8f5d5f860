package tabor.emit.grid;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import tabor.groove.CountLabels;
import tabor.notation.CountLines;
import tabor.rhythm.Count;
import tabor.rhythm.CountNames;
import tabor.rhythm.Division;
import tabor.rhythm.Meter;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;

/**
 * The counts above one bar. Divisions whose counts agree share a row; where one beat is divided in
 * two ways at once, such as a triplet over sixteenths, each way has a row of its own, and each
 * count stands right above its place.
 */
final class CountRows {
  private final Meter meter;
  private final CountLabels words;
  private final List<NavigableMap<Time, String>> rows = new ArrayList<>();

  private CountRows(Meter meter, CountLabels words) {
    this.meter = meter;
    this.words = words;
  }

  /**
   * The rows for one bar, at least one.
   *
   * @param words what is counted aloud
   * @param beats the beats of the bar, 0-based; fewer than the meter's in a pickup
   * @param slots where the bar's strokes stand
   * @param syllables false to count beats only
   */
  static List<Map<Time, String>> of(
      Meter meter,
      CountLabels words,
      List<Integer> beats,
      Collection<Slot> slots,
      boolean syllables) {
    CountRows found = new CountRows(meter, words);
    NavigableMap<Time, String> first = new TreeMap<>();
    beats.forEach(beat -> first.put(meter.beatStart(beat), words.beat(beat, meter)));
    found.rows.add(first);
    if (syllables) {
      Map<Division, NavigableMap<Time, String>> divisions = new HashMap<>();
      for (Slot slot : slots) {
        Map<Time, String> labels = divisions.computeIfAbsent(slot.division(), found::labels);
        labels.computeIfAbsent(slot.place(meter), place -> found.label(slot));
      }
      List<Map.Entry<Division, NavigableMap<Time, String>>> sorted =
          new ArrayList<>(divisions.entrySet());
      sorted.sort(
          (a, b) -> {
            int bySlots = Integer.compare(a.getKey().slots(), b.getKey().slots());
            return bySlots != 0 ? bySlots : Integer.compare(a.getKey().beat(), b.getKey().beat());
          });
      sorted.forEach(entry -> found.join(entry.getValue()));
    }
    return List.copyOf(found.rows);
  }

  private NavigableMap<Time, String> labels(Division division) {
    NavigableMap<Time, String> labels = new TreeMap<>();
    for (int i = 0; i < division.slots(); i++) {
      Slot slot = new Slot(division, i, List.of());
      labels.put(slot.start(meter), label(slot));
    }
    return labels;
  }

  /** The count without the number of its beat, which stands at the beat's start. */
  private String label(Slot slot) {
    Time place = slot.place(meter);
    int beat = meter.beatAt(place);
    if (place.equals(meter.beatStart(beat))) {
      return words.beat(beat, meter);
    }
    String above = words.above(slot, meter);
    if (!above.isEmpty()) {
      return above;
    }
    Count count = CountNames.of(slot, meter);
    return count.beat() == beat + 1 ? words.after(slot, meter) : count.toString();
  }

  private void join(NavigableMap<Time, String> labels) {
    for (NavigableMap<Time, String> row : rows) {
      if (CountLines.agree(row, labels, meter)) {
        row.putAll(labels);
        return;
      }
    }
    rows.add(new TreeMap<>(labels));
  }
}
