package tabor.emit.grid;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tabor.groove.CountLabels;
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
  private final List<Map<Time, String>> rows = new ArrayList<>();

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
    Map<Time, String> first = new TreeMap<>();
    beats.forEach(beat -> first.put(meter.beatStart(beat), words.beat(beat, meter)));
    found.rows.add(first);
    if (syllables) {
      Map<Division, Map<Time, String>> divisions = new HashMap<>();
      for (Slot slot : slots) {
        Map<Time, String> labels = divisions.computeIfAbsent(slot.division(), found::labels);
        labels.computeIfAbsent(slot.place(meter), place -> found.label(slot));
      }
      divisions.entrySet().stream()
          .sorted(
              (a, b) -> {
                int bySlots = Integer.compare(a.getKey().slots(), b.getKey().slots());
                return bySlots != 0
                    ? bySlots
                    : Integer.compare(a.getKey().beat(), b.getKey().beat());
              })
          .forEach(entry -> found.join(entry.getValue()));
    }
    return found.rows;
  }

  private Map<Time, String> labels(Division division) {
    Map<Time, String> labels = new TreeMap<>();
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

  private void join(Map<Time, String> labels) {
    for (Map<Time, String> row : rows) {
      if (agrees(row, labels)) {
        row.putAll(labels);
        return;
      }
    }
    rows.add(new TreeMap<>(labels));
  }

  /** True if no place would have two names, and no name of a beat two places. */
  private boolean agrees(Map<Time, String> row, Map<Time, String> labels) {
    for (Map.Entry<Time, String> entry : labels.entrySet()) {
      String there = row.get(entry.getKey());
      if (there != null && !there.equals(entry.getValue())) {
        return false;
      }
      int beat = meter.beatAt(entry.getKey());
      for (Map.Entry<Time, String> other : row.entrySet()) {
        boolean sameName = other.getValue().equals(entry.getValue());
        boolean twice = entry.getValue().equals(labels.get(other.getKey()));
        if (sameName
            && !twice
            && !other.getKey().equals(entry.getKey())
            && meter.beatAt(other.getKey()) == beat) {
          return false;
        }
      }
    }
    return true;
  }
}
