package tabor.notation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import tabor.groove.CountLabels;
import tabor.groove.Snap;
import tabor.groove.Stroke;
import tabor.rhythm.Division;
import tabor.rhythm.Meter;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;

/**
 * The counts over one bar. Divisions whose counts agree share a row; where one beat is divided in
 * two ways at once, such as a triplet over sixteenths, each way has a row of its own.
 */
public final class CountLines {
  private final Meter meter;
  private final CountLabels labels;
  private final List<Row> rows = new ArrayList<>();

  private CountLines(Meter meter, CountLabels labels) {
    this.meter = meter;
    this.labels = labels;
  }

  /** What could be counted in a row, and what is. */
  private record Row(NavigableMap<Time, String> all, NavigableMap<Time, String> struck) {}

  /**
   * The rows of a bar with what is struck in each; none for a silent bar.
   *
   * @param labels what is counted aloud
   * @param snap of the section: what has snapped to a triplet is counted as one
   * @param strokes of that bar
   */
  static List<Map<Time, String>> of(
      Meter meter, CountLabels labels, Snap snap, List<Stroke> strokes) {
    CountLines lines = new CountLines(meter, labels);
    Map<Division, NavigableMap<Time, String>> struck = new TreeMap<>(CountLines::compare);
    for (Stroke stroke : strokes) {
      Slot slot = snap.slot(stroke);
      if (slot.division().isInside(meter)) {
        String label = labels.above(slot, meter);
        NavigableMap<Time, String> here =
            struck.computeIfAbsent(slot.division(), d -> new TreeMap<>());
        if (!label.isEmpty()) {
          here.put(stroke.at(), label);
        }
      }
    }
    struck.forEach(lines::add);
    List<Map<Time, String>> found = new ArrayList<>();
    for (Row row : lines.rows) {
      if (!row.struck().isEmpty()) {
        found.add(row.struck());
      }
    }
    return found;
  }

  private static int compare(Division a, Division b) {
    int bySlots = Integer.compare(a.slots(), b.slots());
    int byBeat = Integer.compare(a.beat(), b.beat());
    return bySlots != 0 ? bySlots : byBeat != 0 ? byBeat : Integer.compare(a.beats(), b.beats());
  }

  private void add(Division division, NavigableMap<Time, String> struck) {
    TreeMap<Time, String> all = new TreeMap<>(struck);
    // More slots than anybody counts are left to what is struck.
    for (int i = 0; i < division.slots() && division.slots() <= 64; i++) {
      Slot slot = new Slot(division, i, List.of());
      Time place = slot.start(meter);
      String label = all.containsKey(place) ? "" : labels.above(slot, meter);
      if (!label.isEmpty()) {
        all.put(place, label);
      }
    }
    for (Row row : rows) {
      if (agree(row.all(), all, meter)) {
        row.all().putAll(all);
        row.struck().putAll(struck);
        return;
      }
    }
    rows.add(new Row(all, struck));
  }

  /** True if two rows can be one: no place has two names, and no name in a beat two places. */
  public static boolean agree(
      NavigableMap<Time, String> a, NavigableMap<Time, String> b, Meter meter) {
    for (Map.Entry<Time, String> one : b.entrySet()) {
      String there = a.get(one.getKey());
      if (there != null && !there.equals(one.getValue())) {
        return false;
      }
      int beat = meter.beatAt(one.getKey());
      Map<Time, String> around =
          a.subMap(meter.beatStart(beat), true, meter.beatStart(beat + 1), false);
      for (Map.Entry<Time, String> other : around.entrySet()) {
        boolean twice =
            other.getValue().equals(one.getValue()) && !other.getKey().equals(one.getKey());
        // A word that is said twice in a beat, such as e in e und e, is where both rows have it.
        if (twice && !one.getValue().equals(b.get(other.getKey()))) {
          return false;
        }
      }
    }
    return true;
  }
}
