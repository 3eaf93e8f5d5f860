package tabor.notation;

import java.util.ArrayList;
import java.util.List;
import tabor.groove.Snap;
import tabor.groove.Stroke;
import tabor.rhythm.Division;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/**
 * Beats that are divided together: one, or several that a word spreads over without meeting the
 * beats between them.
 *
 * @param first the 0-based beat that it starts on
 * @param beats how many
 * @param stretch what is in it
 */
record BeatSpan(int first, int beats, TimeSpan stretch) {
  /**
   * Cuts a bar into regions.
   *
   * @param from the 0-based beat that the bar starts on, above 0 in a pickup
   * @param marks in order of time
   * @param strokes of the voice in that bar
   */
  static List<BeatSpan> of(
      Meter meter, Snap snap, int from, List<Onset> marks, List<Stroke> strokes) {
    boolean[] joined = new boolean[meter.beatCount() + 1];
    for (Stroke stroke : strokes) {
      Division division = snap.slot(stroke).division();
      if (division.isInside(meter)) {
        int first = division.beat();
        for (int i = 1; i < division.beats(); i++) {
          joined[first + i] = true;
        }
      }
    }
    List<BeatSpan> regions = new ArrayList<>();
    int mark = 0;
    for (int beat = from; beat < meter.beatCount(); ) {
      int next = beat + 1;
      while (next < meter.beatCount() && joined[next]) {
        next++;
      }
      int first = mark;
      Time end = meter.beatStart(next);
      while (mark < marks.size() && marks.get(mark).at().before(end)) {
        mark++;
      }
      TimeSpan stretch = TimeSpan.of(meter.beatStart(beat), end, marks.subList(first, mark));
      cut(meter, new BeatSpan(beat, next - beat, stretch), regions);
      beat = next;
    }
    return regions;
  }

  /** Parts a region at every beat that its grid meets. */
  private static void cut(Meter meter, BeatSpan region, List<BeatSpan> into) {
    int start = region.first;
    TimeSpan whole = region.stretch;
    for (int beat = region.first + 1; beat < region.first + region.beats; beat++) {
      Time place = meter.beatStart(beat);
      if (whole.canCut(place)) {
        Time from = meter.beatStart(start);
        into.add(part(start, beat, TimeSpan.of(from, place, whole.between(from, place))));
        start = beat;
      }
    }
    if (start == region.first) {
      into.add(region);
    } else {
      Time from = meter.beatStart(start);
      into.add(
          part(
              start,
              region.first + region.beats,
              TimeSpan.of(from, whole.end(), whole.between(from, whole.end()))));
    }
  }

  private static BeatSpan part(int first, int next, TimeSpan stretch) {
    return new BeatSpan(first, next - first, stretch);
  }

  boolean isEmpty() {
    return stretch.marks().isEmpty();
  }
}
