package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tabor.notation.Voice;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

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
  /** Room of a quarter note at natural spacing. */
  private static final double QUARTER = 5.3;

  private static final double POWER = 0.54;

  /** Room of a bar that is silent or repeats the one before. */
  private static final double EMPTY = 7.5;

  private static final double EMPTY_LEAST = 4.6;
  private static final double AFTER_BARLINE = 1.0;
  private static final double BEFORE_BARLINE = 0.6;

  /** Columns whose signs pass over and under each other are still so far apart. */
  private static final double CROSSING = 0.75;

  /** What a reader wants between two neighbouring columns, so that a line is not crowded. */
  private static final double COMFORT = 1.9;

  private final BarPlan plan;
  private final List<Slice> slices;
  private final double gap;
  private final double textGap;
  private final double lead;
  private final double late;

  /** A distance that two columns need. */
  private record Need(int from, int to, double room) {}

  private final List<Need> needs = new ArrayList<>();

  /** Where each beat's distances begin and end, and whether they are in proportion to time. */
  private record Beat(int from, int to, boolean crossing) {}

  private final List<Beat> beats = new ArrayList<>();

  /** For each column the first one that lasts as long. */
  private final int[] alike;

  /** True for each column that has small notes before it. */
  private final boolean[] smallNotes;

  /**
   * A bar to space.
   *
   * @param tight true for as close as can still be read
   */
  BarSpacing(BarPlan plan, Meter meter, boolean tight) {
    this.plan = plan;
    this.slices = plan.slices();
    this.alike = new int[slices.size()];
    this.smallNotes = new boolean[slices.size()];
    Map<Time, Integer> lengths = new HashMap<>();
    for (int i = 0; i < slices.size(); i++) {
      Integer same = lengths.putIfAbsent(slices.get(i).length(), i);
      alike[i] = same == null ? i : same;
      smallNotes[i] = slices.get(i).chords().anyMatch(chord -> !chord.graces().isEmpty());
    }
    this.gap = tight ? 0.14 : 0.32;
    this.textGap = tight ? 0.2 : 0.45;
    if (slices.isEmpty()) {
      lead = 0;
      late = 0;
      return;
    }
    Slice first = slices.get(0);
    double text = widest(first) / 2 - Rule.HEAD / 2;
    lead = plan.room() + AFTER_BARLINE + Math.max(-first.left(), text - 0.4);
    late = Durations.of(first.at().minus(plan.bar().start()));
    findNeeds();
    findBeats(meter);
  }

  private static double widest(Slice slice) {
    double widest = 0;
    for (List<Double> widths : List.of(slice.countWidths(), slice.stickingWidths())) {
      for (double width : widths) {
        widest = Math.max(widest, width);
      }
    }
    return widest;
  }

  // ---- what the signs need ----

  private void findNeeds() {
    for (int i = 0; i + 1 < slices.size(); i++) {
      for (int j = i + 1; j < Math.min(slices.size(), i + 6); j++) {
        double room = needed(slices.get(i), slices.get(j));
        if (j == i + 1) {
          room = Math.max(room, CROSSING);
        }
        if (room > 0) {
          needs.add(new Need(i, j, room));
        }
      }
      for (Voice voice : Voice.values()) {
        followers(i, voice);
      }
      texts(i);
    }
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
        needs.add(new Need(i, j, chord.right() + gap - next.left()));
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
            needs.add(new Need(i, j, (own.get(row) + others.get(row)) / 2 + textGap));
            break;
          }
        }
      }
    }
  }

  private List<Double> widths(int slice, boolean counts) {
    return counts ? slices.get(slice).countWidths() : slices.get(slice).stickingWidths();
  }

  /** Room between two columns so that none of their signs touch; 0 if none are at one height. */
  private double needed(Slice left, Slice right) {
    double room = 0;
    for (Box a : boxes(left)) {
      for (Box b : boxes(right)) {
        if (a.bottom() > b.top() && b.bottom() > a.top()) {
          room = Math.max(room, a.right() + gap - b.left());
        }
      }
    }
    return room;
  }

  private static List<Box> boxes(Slice slice) {
    List<Box> boxes = new ArrayList<>();
    slice
        .chords()
        .forEach(
            chord -> {
              double high = Double.POSITIVE_INFINITY;
              double low = Double.NEGATIVE_INFINITY;
              for (ChordShape.Head head : chord.heads()) {
                high = Math.min(high, head.y() - 0.8);
                low = Math.max(low, head.y() + 0.8);
              }
              boxes.add(
                  chord.up()
                      ? new Box(chord.left(), -1000, chord.right(), low)
                      : new Box(chord.left(), high, chord.right(), 1000));
            });
    for (RestShape rest : slice.rests()) {
      boxes.add(rest.box());
    }
    return boxes;
  }

  // ---- beats ----

  private void findBeats(Meter meter) {
    for (int beat = 0; beat < meter.beatCount(); beat++) {
      Time start = meter.beatStart(beat);
      Time end = meter.beatStart(beat + 1);
      int from = firstFrom(start);
      int to = firstFrom(end);
      // The distance to the next beat belongs to this one, the one to the barline to none.
      int last = to < slices.size() ? to : slices.size() - 1;
      if (to < slices.size() && !slices.get(to).at().equals(end)) {
        last = to - 1;
      }
      if (last > from) {
        beats.add(new Beat(from, last, crosses(from, to)));
      }
    }
  }

  private int firstFrom(Time at) {
    int i = 0;
    while (i < slices.size() && slices.get(i).at().before(at)) {
      i++;
    }
    return i;
  }

  /** True if each voice, or each row of counts, has a column that the other lacks. */
  private boolean crosses(int from, int to) {
    boolean onlyHands = false;
    boolean onlyFeet = false;
    boolean[] rowAlone = new boolean[8];
    int rows = 0;
    for (Slice slice : slices.subList(from, to)) {
      onlyHands |= slice.hands() != null && slice.feet() == null;
      onlyFeet |= slice.feet() != null && slice.hands() == null;
      int said = -1;
      for (int row = 0; row < Math.min(8, slice.counts().size()); row++) {
        if (!slice.counts().get(row).isEmpty()) {
          said = said < 0 ? row : 8;
        }
      }
      if (said >= 0 && said < 8 && !rowAlone[said]) {
        rowAlone[said] = true;
        rows++;
      }
    }
    return (onlyHands && onlyFeet) || rows > 1;
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
    double x = lead + (late > 0 ? force * natural(late) : 0);
    for (int i = 0; i < count; i++) {
      places[i] = x;
      x += i + 1 < count ? gaps[i] : 0;
    }
    Slice last = slices.get(count - 1);
    double text = Rule.HEAD / 2 + widest(last) / 2 + textGap - BEFORE_BARLINE;
    double after =
        Math.max(
            Math.max(last.right() + BEFORE_BARLINE + gap, text),
            force * natural(Durations.of(last.length())));
    places[count] = x + after;
    return places;
  }

  private double[] gaps(double force) {
    double[] gaps = new double[slices.size() - 1];
    for (int i = 0; i < gaps.length; i++) {
      gaps[i] = force * natural(length(i));
    }
    for (Beat beat : beats) {
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
      double time = 0;
      for (int i = need.from(); i < need.to(); i++) {
        room += gaps[i];
        time += length(i);
      }
      if (room < need.room()) {
        for (int i = need.from(); i < need.to(); i++) {
          gaps[i] += (need.room() - room) * length(i) / time;
        }
      }
    }
    beats.forEach(beat -> even(beat, gaps));
    return gaps;
  }

  /** Only ever widens, so that what the signs need stays met. */
  private void even(Beat beat, double[] gaps) {
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
    double[] widest = new double[alike.length];
    double[] widestPlain = new double[alike.length];
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
    return Durations.of(slices.get(i).length());
  }

  /** The width at which the bar is not yet crowded. */
  double comfort() {
    if (slices.isEmpty()) {
      return place(0)[0];
    }
    double[] gaps = gaps(0);
    Arrays.setAll(gaps, i -> Math.max(gaps[i], COMFORT));
    return lead + Arrays.stream(gaps).sum() + Math.max(COMFORT, slices.get(gaps.length).right());
  }

  /** The bar's width at a force. */
  double width(double force) {
    return place(force)[slices.size()];
  }

  private static double natural(double wholes) {
    return QUARTER * StrictMath.pow(4 * wholes, POWER);
  }
}
