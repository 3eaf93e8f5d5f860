package tabor.notation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import tabor.lists.Lists;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/** Joins the flagged chords of one voice in one bar by beams. */
final class Beamer {
  private static final Time QUARTER = Written.Type.QUARTER.length();
  private static final Time HALF = Written.Type.HALF.length();

  private static final Time EIGHTH = Written.Type.EIGHTH.length();
  private static final Time SIXTEENTH = Written.Type.SIXTEENTH.length();

  private final List<Draft> drafts;
  private final Extents extents;
  private final NavigableSet<Time> edges;
  private final NavigableSet<Time> windows;

  /** The beamed runs: the indices of their chords in order. */
  private final List<int[]> runs = new ArrayList<>();

  /** For each event the number of its run, -1 for none. */
  private final int[] runOf;

  /** For each chord how many beams join it to the next chord of its run; 0 at the end of one. */
  private final int[] joined;

  private final List<List<Beam>> beams = new ArrayList<>();

  Beamer(Meter meter, VoiceWriter.Result written, Extents extents) {
    this.drafts = written.drafts();
    this.edges = written.edges();
    this.extents = extents;
    this.windows = windows(meter, written.regions());
    this.runOf = new int[drafts.size()];
    this.joined = new int[drafts.size()];
    Arrays.fill(runOf, -1);
    for (int i = 0; i < drafts.size(); i++) {
      beams.add(List.of());
    }
    findRuns();
    for (int[] run : runs) {
      join(run);
    }
  }

  /** The beams of an event, one for each flag; none for what is not beamed. */
  List<Beam> beams(int event) {
    return beams.get(event);
  }

  /**
   * True if a tuplet needs a bracket: it holds another, or no beam, or no end of one, says what
   * belongs to it.
   */
  boolean needsBracket(RhythmNode tuplet) {
    int first = extents.first(tuplet);
    int last = extents.last(tuplet);
    if (first == last || runOf[first] < 0 || Lists.any(tuplet.items(), RhythmNode.Item::isTuplet)) {
      return true;
    }
    int least = Integer.MAX_VALUE;
    for (int i = first; i <= last; i++) {
      if (runOf[i] != runOf[first]) {
        return true;
      }
      if (i < last) {
        least = Math.min(least, joined[i]);
      }
    }
    int[] run = runs.get(runOf[first]);
    int before = first == run[0] ? 0 : joined[first - 1];
    return before >= least || joined[last] >= least;
  }

  private NavigableSet<Time> windows(Meter meter, List<BeatSpan> regions) {
    NavigableSet<Time> starts = groups(meter);
    for (BeatSpan region : regions) {
      if (region.beats() > 1) {
        Time end = region.stretch().end();
        starts.subSet(region.stretch().start(), false, end, false).clear();
      }
    }
    for (Draft draft : drafts) {
      if (!draft.tuplets().isEmpty()) {
        RhythmNode outer = draft.tuplets().get(0);
        Time start = drafts.get(extents.first(outer)).start();
        starts.subSet(start, false, drafts.get(extents.last(outer)).end(), false).clear();
      }
    }
    return starts;
  }

  /** A run is broken by the end of a window, by a chord without flags and by a long rest. */
  private void findRuns() {
    List<Integer> run = new ArrayList<>();
    Time end = Time.ZERO;
    for (int i = 0; i < drafts.size(); i++) {
      Draft draft = drafts.get(i);
      if (!draft.start().before(end)) {
        close(run);
        Time next = windows.higher(draft.start());
        end = next == null ? draft.end() : next;
      }
      if (draft.written().type().flags() == 0) {
        close(run);
      } else if (!draft.isRest()) {
        run.add(i);
      }
    }
    close(run);
  }

  private void close(List<Integer> run) {
    if (run.size() > 1) {
      int[] events = new int[run.size()];
      for (int i = 0; i < events.length; i++) {
        events[i] = run.get(i);
        runOf[events[i]] = runs.size();
      }
      runs.add(events);
    }
    run.clear();
  }

  private void join(int[] run) {
    int finest = 0;
    for (int event : run) {
      finest = Math.max(finest, drafts.get(event).flags());
    }
    Time start = windowStart(run);
    for (int i = 0; i + 1 < run.length; i++) {
      Draft left = drafts.get(run[i]);
      Draft right = drafts.get(run[i + 1]);
      int most = Math.min(left.flags(), right.flags());
      joined[run[i]] = Math.min(most, allowed(left, right, start, finest));
    }
    for (int i = 0; i < run.length; i++) {
      beams.set(run[i], beams(run, i, start));
    }
  }

  private Time windowStart(int[] run) {
    Time start = windows.floor(drafts.get(run[0]).start());
    return start == null ? Time.ZERO : start;
  }

  /** How many beams may join two chords: fewer where a group, a quarter or an eighth begins. */
  private int allowed(Draft left, Draft right, Time window, int finest) {
    Time edge = edges.higher(left.start());
    boolean sameTuplet = innermost(left) == innermost(right);
    if (!sameTuplet || (edge != null && edge.compareTo(right.start()) <= 0)) {
      return 1;
    }
    if (!left.tuplets().isEmpty()) {
      return Integer.MAX_VALUE;
    }
    Time from = left.start().minus(window);
    Time to = right.start().minus(window);
    Time end = windows.higher(window);
    boolean dotted = end != null && Meter.isDotted(end.minus(window));
    if ((!dotted && crosses(from, to, QUARTER)) || (finest > 2 && crosses(from, to, EIGHTH))) {
      return 1;
    }
    return finest > 3 && crosses(from, to, SIXTEENTH) ? 2 : Integer.MAX_VALUE;
  }

  private static Object innermost(Draft draft) {
    List<RhythmNode> tuplets = draft.tuplets();
    return tuplets.isEmpty() ? Draft.class : tuplets.get(tuplets.size() - 1);
  }

  /** True if a multiple of {@code step} lies after {@code from} and not after {@code to}. */
  private static boolean crosses(Time from, Time to, Time step) {
    return from.over(step).floor() < to.over(step).floor();
  }

  /**
   * Which way a hook points: into the innermost tuplet that it stands in, else to the side that
   * more beams lead to, else to the stroke that it makes a pair with.
   */
  private boolean pointsForward(int[] run, int place, Time window, int before, int after) {
    Draft draft = drafts.get(run[place]);
    int tuplets = draft.tuplets().size();
    for (int depth = tuplets - 1; depth >= 0; depth--) {
      RhythmNode tuplet = draft.tuplets().get(depth);
      boolean left = place > 0 && drafts.get(run[place - 1]).tuplets().contains(tuplet);
      boolean right =
          place + 1 < run.length && drafts.get(run[place + 1]).tuplets().contains(tuplet);
      if (left != right) {
        return right;
      }
      if (left) {
        break;
      }
    }
    if (before != after) {
      return before < after;
    }
    Time from = tuplets == 0 ? window : tupletStart(draft.tuplets().get(tuplets - 1));
    return draft.start().minus(from).over(draft.length().times(2)).isWhole();
  }

  private Time tupletStart(RhythmNode tuplet) {
    return drafts.get(extents.first(tuplet)).start();
  }

  private List<Beam> beams(int[] run, int place, Time window) {
    Draft draft = drafts.get(run[place]);
    int before = place == 0 ? 0 : joined[run[place - 1]];
    int after = joined[run[place]];
    List<Beam> levels = new ArrayList<>();
    for (int level = 1; level <= draft.flags(); level++) {
      if (before >= level) {
        levels.add(after >= level ? Beam.CONTINUE : Beam.END);
      } else if (after >= level) {
        levels.add(Beam.BEGIN);
      } else {
        levels.add(
            pointsForward(run, place, window, before, after)
                ? Beam.FORWARD_HOOK
                : Beam.BACKWARD_HOOK);
      }
    }
    return levels;
  }

  /**
   * Where windows start, the bar's end included: every beat is one, but whole-note beats are
   * halved, dotted halves fall into quarters, and short beats are taken together in threes where
   * the bar divides so, else up to a quarter with what is left over in the last.
   */
  private static NavigableSet<Time> groups(Meter meter) {
    NavigableSet<Time> starts = new TreeSet<>();
    int beats = meter.beatCount();
    if (meter.isEven() && meter.beat(0).before(QUARTER) && !Meter.isDotted(meter.beat(0))) {
      int size = beats % 3 == 0 ? 3 : Math.max(1, (int) QUARTER.over(meter.beat(0)).floor());
      for (int beat = 0; beat == 0 || beat + size <= beats; beat += size) {
        starts.add(meter.beatStart(beat));
      }
    } else {
      for (int beat = 0; beat < beats; beat++) {
        starts.addAll(within(meter.beatStart(beat), meter.beat(beat)));
      }
    }
    starts.add(meter.bar());
    return starts;
  }

  private static List<Time> within(Time start, Time beat) {
    Time step = beat;
    if (beat.compareTo(HALF) > 0) {
      step = Meter.isDotted(beat) ? QUARTER : HALF;
    }
    List<Time> starts = new ArrayList<>();
    for (Time at = Time.ZERO; at.before(beat); at = at.plus(step)) {
      starts.add(start.plus(at));
    }
    return starts;
  }
}
