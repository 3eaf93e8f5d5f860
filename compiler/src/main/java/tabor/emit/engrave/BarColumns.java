package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.notation.Voice;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/** The columns of a bar as numbers: what stays the same however close they come to each other. */
final class BarColumns {
  /** Room of a quarter note at natural spacing. */
  private static final double QUARTER = 5.3;

  private static final double POWER = 0.54;

  private static final Voice[] VOICES = Voice.values();

  /** Numbers that make up a box: left, top, right, bottom. */
  private static final int BOX = 4;

  /** Where each beat's distances begin and end, and whether they are in proportion to time. */
  record BeatColumns(int from, int to, boolean crossing) {}

  final BarPlan plan;
  final List<Slice> slices;
  final List<BeatColumns> beats = new ArrayList<>();

  /** Length of each column, to the next one or to the bar's end, in whole notes. */
  final double[] lengths;

  /** The room that each of these wants at natural spacing. */
  final double[] naturals;

  /** Room at natural spacing from the barline to the first column where that begins late. */
  final double late;

  /** What stands in each column, box after box. */
  final double[][] boxes;

  /** For each column the first one that lasts as long. */
  final int[] alike;

  /** True for each column that has small notes before it. */
  final boolean[] smallNotes;

  /** The columns of a bar. */
  BarColumns(BarPlan plan, Meter meter) {
    this.plan = plan;
    this.slices = plan.slices();
    int count = slices.size();
    this.lengths = new double[count];
    this.naturals = new double[count];
    this.boxes = new double[count][];
    this.alike = new int[count];
    this.smallNotes = new boolean[count];
    Map<Time, Integer> known = new HashMap<>();
    for (int i = 0; i < count; i++) {
      Slice slice = slices.get(i);
      Integer same = known.putIfAbsent(slice.length(), i);
      alike[i] = same == null ? i : same;
      lengths[i] = Durations.of(slice.length());
      naturals[i] = same == null ? natural(lengths[i]) : naturals[same];
      smallNotes[i] = hasSmallNotes(slice.hands()) || hasSmallNotes(slice.feet());
      boxes[i] = boxes(slice);
    }
    if (count == 0) {
      this.late = 0;
      return;
    }
    double before = Durations.of(slices.get(0).at().minus(plan.bar().start()));
    this.late = before > 0 ? natural(before) : 0;
    findBeats(meter);
  }

  /** True if the columns are as long as those and grouped alike, whatever stands in them. */
  boolean isLike(BarColumns other) {
    return late == other.late
        && beats.equals(other.beats)
        && Arrays.equals(lengths, other.lengths)
        && Arrays.equals(naturals, other.naturals)
        && Arrays.equals(alike, other.alike)
        && Arrays.equals(smallNotes, other.smallNotes);
  }

  private static boolean hasSmallNotes(@Nullable ChordShape chord) {
    return chord != null && !chord.graces().isEmpty();
  }

  private static double natural(double wholes) {
    return QUARTER * StrictMath.pow(4 * wholes, POWER);
  }

  // ---- what stands where ----

  private static double[] boxes(Slice slice) {
    double[] boxes =
        new double
            [BOX
                * ((slice.hands() == null ? 0 : 1)
                    + (slice.feet() == null ? 0 : 1)
                    + slice.rests().size())];
    int at = 0;
    for (Voice voice : VOICES) {
      ChordShape chord = slice.chord(voice);
      if (chord != null) {
        double high = Double.POSITIVE_INFINITY;
        double low = Double.NEGATIVE_INFINITY;
        for (ChordShape.Head head : chord.heads()) {
          high = Math.min(high, head.y() - 0.8);
          low = Math.max(low, head.y() + 0.8);
        }
        at =
            put(
                boxes,
                at,
                chord.left(),
                chord.up() ? -1000 : high,
                chord.right(),
                chord.up() ? low : 1000);
      }
    }
    for (RestShape rest : slice.rests()) {
      Box box = rest.box();
      at = put(boxes, at, box.left(), box.top(), box.right(), box.bottom());
    }
    return boxes;
  }

  private static int put(
      double[] boxes, int at, double left, double top, double right, double bottom) {
    boxes[at] = left;
    boxes[at + 1] = top;
    boxes[at + 2] = right;
    boxes[at + 3] = bottom;
    return at + BOX;
  }

  /**
   * Room between two columns so that none of their signs touch; 0 if none are at one height.
   *
   * @param gap what stays free between two signs
   */
  double needed(int left, int right, double gap) {
    double[] a = boxes[left];
    double[] b = boxes[right];
    double room = 0;
    for (int i = 0; i < a.length; i += BOX) {
      for (int j = 0; j < b.length; j += BOX) {
        if (a[i + 3] > b[j + 1] && b[j + 3] > a[i + 1]) {
          room = Math.max(room, a[i + 2] + gap - b[j]);
        }
      }
    }
    return room;
  }

  // ---- beats ----

  private void findBeats(Meter meter) {
    int to = firstFrom(0, meter.beatStart(0));
    for (int beat = 0; beat < meter.beatCount(); beat++) {
      int from = to;
      Time end = meter.beatStart(beat + 1);
      to = firstFrom(from, end);
      // The distance to the next beat belongs to this one, the one to the barline to none.
      int last = to < slices.size() ? to : slices.size() - 1;
      if (to < slices.size() && !slices.get(to).at().equals(end)) {
        last = to - 1;
      }
      if (last > from) {
        beats.add(new BeatColumns(from, last, crosses(from, to)));
      }
    }
  }

  private int firstFrom(int from, Time at) {
    int i = from;
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
}
