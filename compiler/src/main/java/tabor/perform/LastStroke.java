package tabor.perform;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.rhythm.Time;

/**
 * The stroke on which the count stops. It rings as long as the chart says, counted from where it
 * sounds, in place of what was left of the bar; several that sound together ring together. Where
 * nothing was struck, after bars that are the student's for example, the count stops at the end.
 */
final class LastStroke {
  private LastStroke() {}

  /** Cuts the last passages at their last stroke and lets it ring so many beats. */
  static void hold(List<ChartPlan.Passage> passages, int beats, int item) {
    if (passages.isEmpty()) {
      return;
    }
    ChartPlan.Passage last = passages.get(passages.size() - 1);
    if (last.times() > 1) {
      passages.set(
          passages.size() - 1,
          new ChartPlan.Passage(last.segments(), last.times() - 1, last.item()));
      passages.add(new ChartPlan.Passage(last.segments(), 1, last.item()));
    }
    for (int p = passages.size() - 1; p >= 0 && passages.get(p).times() == 1; p--) {
      List<PlannedSegment> row = passages.get(p).segments();
      for (int i = row.size() - 1; i >= 0; i--) {
        PlannedSegment segment = row.get(i);
        if (segment.kind() != Segment.Kind.SECTION) {
          stop(passages, beats, item);
          return;
        }
        Time place = last(segment);
        if (place != null) {
          List<PlannedSegment> kept = new ArrayList<>(row.subList(0, i));
          if (segment.from().before(place)) {
            kept.add(segment.piece(segment.from(), place));
          }
          int line = passages.get(p).item();
          passages.subList(p, passages.size()).clear();
          if (!kept.isEmpty()) {
            passages.add(new ChartPlan.Passage(kept, 1, line));
          }
          Time length = segment.tempo().beat().times(beats);
          PlannedSegment held = segment.held(place, length);
          List<PlannedSegment.Words> words =
              segment.from().before(place) ? List.of() : segment.signs();
          passages.add(new ChartPlan.Passage(List.of(held.after(words)), 1, line));
          return;
        }
      }
    }
    stop(passages, beats, item);
  }

  private static void stop(List<ChartPlan.Passage> passages, int beats, int item) {
    List<PlannedSegment> row = passages.get(passages.size() - 1).segments();
    PlannedSegment end = row.get(row.size() - 1);
    Time length = end.tempo().beat().times(beats);
    passages.add(new ChartPlan.Passage(List.of(end.held(end.to(), length)), 1, item));
  }

  /** Where the last stroke of a segment sounds; null if there is none. */
  private static @Nullable Time last(PlannedSegment segment) {
    Groove groove = segment.groove();
    Time found = null;
    if (groove != null) {
      for (SectionSounds.Local local :
          SectionSounds.of(groove, segment.tempo(), segment.feel(), segment.manner().over())) {
        boolean here =
            !local.main().before(segment.from())
                && local.main().before(segment.to())
                && !SectionSounds.isLeftOut(groove, local.stroke(), segment.manner().without());
        if (here && (found == null || found.before(local.main()))) {
          found = local.main();
        }
      }
    }
    return found;
  }
}
