package tabor.perform;

import java.util.ArrayList;
import java.util.List;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.rhythm.Meters;
import tabor.rhythm.Time;

/** Rows of segments, cut and put together. */
final class Rows {
  private Rows() {}

  static Time length(List<PlannedSegment> row) {
    Time length = Time.ZERO;
    for (PlannedSegment segment : row) {
      length = BoundedTime.plus(length, segment.length());
    }
    return length;
  }

  static long bars(List<PlannedSegment> row) {
    long bars = 0;
    for (PlannedSegment segment : row) {
      bars += segment.barlines();
    }
    return bars;
  }

  /** A row without so much at its end. */
  static List<PlannedSegment> withoutTail(List<PlannedSegment> row, Time tail) {
    List<PlannedSegment> kept = new ArrayList<>(row);
    Time left = tail;
    while (left.sign() > 0 && !kept.isEmpty()) {
      PlannedSegment last = kept.remove(kept.size() - 1);
      if (left.before(last.length())) {
        kept.add(last.cut(last.from(), last.to().minus(left)));
        break;
      }
      left = left.minus(last.length());
    }
    return kept;
  }

  /** The first bars of a row, the pickup of the first with them. */
  static List<PlannedSegment> firstBars(List<PlannedSegment> row, long bars) {
    List<PlannedSegment> kept = new ArrayList<>();
    long left = bars;
    for (PlannedSegment segment : row) {
      long own = segment.barlines();
      if (left == 0) {
        break;
      }
      if (own <= left) {
        kept.add(segment);
        left -= own;
      } else {
        int first = segment.from().sign() <= 0 ? 1 : segment.meters().place(segment.from()).bar();
        Time end = segment.meters().start(Math.toIntExact(first + left));
        kept.add(segment.cut(segment.from(), end));
        left = 0;
      }
    }
    return kept;
  }

  /**
   * A row that ends with a fill: it takes the place of as much as it lasts, its pickup included; of
   * one that is longer than the row only the end is played.
   */
  static List<PlannedSegment> filled(List<PlannedSegment> row, Groove fill) {
    if (row.isEmpty()) {
      return row;
    }
    PlannedSegment last = row.get(row.size() - 1);
    PlannedSegment whole =
        PlannedSegment.section(
            new Chart.Turn(fill, last.tempo(), last.feel()), true, last.manner());
    if (fill.isPickupOnly()) {
      whole = whole.cut(whole.from(), Time.ZERO);
    }
    Time all = length(row);
    if (whole.length().before(all)) {
      List<PlannedSegment> filled = new ArrayList<>(withoutTail(row, whole.length()));
      filled.add(whole);
      return filled;
    }
    return List.of(whole.cut(whole.to().minus(all), whole.to()));
  }

  /** So many bars of a section from one on, round and round; at most as many as it has. */
  static List<PlannedSegment> stretch(PlannedSegment section, int first, int bars) {
    List<PlannedSegment> found = new ArrayList<>();
    Meters meters = section.meters();
    int bar = first;
    int left = bars;
    while (left > 0) {
      int count = Math.min(left, section.bars() - bar + 1);
      Time from = bar == 1 ? section.from() : meters.start(bar);
      found.add(section.cut(from, meters.start(bar + count)));
      left -= count;
      bar = 1;
    }
    return found;
  }

  /** A row cut at the line of its bar with this number, counted from 1, and words put there. */
  static List<PlannedSegment> marked(
      List<PlannedSegment> row, long bar, List<PlannedSegment.Words> words) {
    List<PlannedSegment> marked = new ArrayList<>();
    long before = 0;
    for (PlannedSegment segment : row) {
      long own = segment.barlines();
      boolean here = bar > before && bar <= before + own;
      boolean cut = bar > before + 1 || (here && !segment.beginsBar());
      if (!here) {
        marked.add(segment);
      } else if (!cut) {
        marked.add(segment.after(words));
      } else {
        int base = segment.from().sign() <= 0 ? 0 : segment.meters().place(segment.from()).bar();
        int lines = segment.from().sign() <= 0 || !segment.beginsBar() ? base : base - 1;
        Time line = segment.meters().start(Math.toIntExact(lines + bar - before));
        marked.add(segment.piece(segment.from(), line));
        marked.add(segment.piece(line, segment.to()).after(words));
      }
      before += own;
    }
    return marked;
  }
}
