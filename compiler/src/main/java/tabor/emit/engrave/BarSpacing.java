package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;
import tabor.notation.Voice;

/**
 * Spaces the columns of one bar, whatever stands before and after it: equal bars get equal widths.
 *
 * <p>Each distance wants room that grows with its length, but less than in proportion (a power of
 * 0.54: twice the length takes about 1.45 times the room), and never gets less than the signs and
 * texts at its ends need. Inside a beat, distances of the same length are the same, but for those
 * that small notes stand in; where parts divide a beat in ways that cross each other, all its
 * distances are in proportion to time.
 */
final class BarSpacing {
  /** Room of a bar that is silent or repeats the one before. */
  private static final double EMPTY = 7.5;

  private static final double EMPTY_LEAST = 4.6;
  private static final double AFTER_BARLINE = 1.0;
  private static final double BEFORE_BARLINE = 0.6;

  /** Columns whose signs pass over and under each other are still so far apart. */
  private static final double CROSSING = 0.75;

  /** What a reader wants between two neighbouring columns, so that a line is not crowded. */
  private static final double COMFORT = 1.9;

  private final BarColumns columns;
  private final BarPlan plan;
  private final List<Slice> slices;
  private final double gap;
  private final double textGap;
  private final double lead;

  /** A distance that two columns need, and the time between them. */
  private record Need(int from, int to, double room, double time) {}

  private final List<Need> needs = new ArrayList<>();

  /**
   * A bar to space.
   *
   * @param tight true for as close as can still be read
   */
  BarSpacing(BarColumns columns, boolean tight) {
    this.columns = columns;
    this.plan = columns.plan;
    this.slices = columns.slices;
    this.gap = tight ? 0.14 : 0.32;
    this.textGap = tight ? 0.2 : 0.45;
    if (slices.isEmpty()) {
      lead = 0;
      return;
    }
    Slice first = slices.get(0);
    double text = widest(first) / 2 - Rule.HEAD / 2;
    lead = plan.room() + AFTER_BARLINE + Math.max(-first.left(), text - 0.4);
    findNeeds();
  }

  /** True if it spaces its columns as the other one does, whatever they are. */
  boolean isLike(BarSpacing other) {
    return lead == other.lead
        && gap == other.gap
        && plan.room() == other.plan.room()
        && plan.least() == other.plan.least()
        && slices.size() == other.slices.size()
        && needs.equals(other.needs)
        && columns.isLike(other.columns)
        && (slices.isEmpty()
            || (after() == other.after() && last().right() == other.last().right()));
  }

  /** Room behind the last column, however loose the bar is. */
  private double after() {
    double text = Rule.HEAD / 2 + widest(last()) / 2 + textGap - BEFORE_BARLINE;
    return Math.max(last().right() + BEFORE_BARLINE + gap, text);
  }

  private Slice last() {
    return slices.get(slices.size() - 1);
  }

  private static double widest(Slice slice) {
    return Math.max(widest(slice.countWidths()), widest(slice.stickingWidths()));
  }

  private static double widest(List<Double> widths) {
    double widest = 0;
    for (double width : widths) {
      widest = Math.max(widest, width);
    }
    return widest;
  }

  // ---- what the signs need ----

  private void findNeeds() {
    for (int i = 0; i + 1 < slices.size(); i++) {
      for (int j = i + 1; j < Math.min(slices.size(), i + 6); j++) {
        double room = columns.needed(i, j, gap);
        if (j == i + 1) {
          room = Math.max(room, CROSSING);
        }
        if (room > 0) {
          need(i, j, room);
        }
      }
      for (Voice voice : Voice.values()) {
        followers(i, voice);
      }
      texts(i);
    }
  }

  private void need(int from, int to, double room) {
    double time = 0;
    for (int i = from; i < to; i++) {
      time += length(i);
    }
    needs.add(new Need(from, to, room, time));
  }

  /** The next chord of the voice, however far on. */
  private void followers(int i, Voice voice) {
    ChordShape chord = slices.get(i).chord(voice);
    if (chord == null) {
      return;
    }
    for (int j = i + 1; j < slices.size(); j++) {
      ChordShape next = slices.get(j).chord(voice);
      if (next != null) {
        need(i, j, chord.right() + gap - next.left());
        return;
      }
    }
  }

  private void texts(int i) {
    for (boolean counts : new boolean[] {true, false}) {
      List<Double> own = widths(i, counts);
      for (int row = 0; row < own.size(); row++) {
        if (own.get(row) == 0) {
          continue;
        }
        for (int j = i + 1; j < slices.size(); j++) {
          List<Double> others = widths(j, counts);
          if (row < others.size() && others.get(row) > 0) {
            need(i, j, (own.get(row) + others.get(row)) / 2 + textGap);
            break;
          }
        }
      }
    }
  }

  private List<Double> widths(int slice, boolean counts) {
    return counts ? slices.get(slice).countWidths() : slices.get(slice).stickingWidths();
  }

  // ---- spacing ----

  /** Columns from the barline on, and the width of the bar as the last number. */
  double[] place(double force) {
    int count = slices.size();
    double[] places = new double[count + 1];
    if (count == 0) {
      places[0] = plan.room() + Math.max(Math.max(EMPTY_LEAST, plan.least()), EMPTY * force);
      return places;
    }
    double[] gaps = gaps(force);
    double x = lead + force * columns.late;
    for (int i = 0; i < count; i++) {
      places[i] = x;
      x += i + 1 < count ? gaps[i] : 0;
    }
    places[count] = x + Math.max(after(), force * columns.naturals[count - 1]);
    return places;
  }

  private double[] gaps(double force) {
    double[] gaps = new double[slices.size() - 1];
    for (int i = 0; i < gaps.length; i++) {
      gaps[i] = force * columns.naturals[i];
    }
    for (BarColumns.BeatColumns beat : columns.beats) {
      if (beat.crossing()) {
        double wish = 0;
        double time = 0;
        for (int i = beat.from(); i < beat.to(); i++) {
          wish += gaps[i] * 0.8;
          time += length(i);
        }
        for (int i = beat.from(); i < beat.to(); i++) {
          gaps[i] = wish * length(i) / time;
        }
      }
    }
    for (Need need : needs) {
      double room = 0;
      for (int i = need.from(); i < need.to(); i++) {
        room += gaps[i];
      }
      if (room < need.room()) {
        for (int i = need.from(); i < need.to(); i++) {
          gaps[i] += (need.room() - room) * length(i) / need.time();
        }
      }
    }
    double[] widest = new double[slices.size()];
    double[] widestPlain = new double[slices.size()];
    for (BarColumns.BeatColumns beat : columns.beats) {
      even(beat, gaps, widest, widestPlain);
    }
    return gaps;
  }

  /**
   * Only ever widens, so that what the signs need stays met.
   *
   * @param widest room for the widest distance of each length of a beat
   * @param widestPlain the same of distances that no small notes stand in
   */
  private void even(
      BarColumns.BeatColumns beat, double[] gaps, double[] widest, double[] widestPlain) {
    if (beat.crossing()) {
      double rate = 0;
      for (int i = beat.from(); i < beat.to(); i++) {
        rate = Math.max(rate, gaps[i] / length(i));
      }
      for (int i = beat.from(); i < beat.to(); i++) {
        gaps[i] = rate * length(i);
      }
      return;
    }
    // Before small notes a column may be wider than its like, and is as wide as the widest.
    int[] alike = columns.alike;
    boolean[] smallNotes = columns.smallNotes;
    for (int i = beat.from(); i < beat.to(); i++) {
      widest[alike[i]] = 0;
      widestPlain[alike[i]] = 0;
    }
    for (int i = beat.from(); i < beat.to(); i++) {
      widest[alike[i]] = Math.max(widest[alike[i]], gaps[i]);
      if (!smallNotes[i + 1]) {
        widestPlain[alike[i]] = Math.max(widestPlain[alike[i]], gaps[i]);
      }
    }
    for (int i = beat.from(); i < beat.to(); i++) {
      gaps[i] = Math.max(gaps[i], (smallNotes[i + 1] ? widest : widestPlain)[alike[i]]);
    }
  }

  private double length(int i) {
    return columns.lengths[i];
  }

  /** The width at which the bar is not yet crowded. */
  double comfort() {
    if (slices.isEmpty()) {
      return place(0)[0];
    }
    double between = 0;
    for (double gap : gaps(0)) {
      between += Math.max(gap, COMFORT);
    }
    return lead + between + Math.max(COMFORT, last().right());
  }

  /** The bar's width at a force. */
  double width(double force) {
    return place(force)[slices.size()];
  }
}
