package tabor.notation;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Set;
import java.util.TreeSet;
import tabor.groove.Groove;
import tabor.groove.Snap;
import tabor.groove.Stroke;
import tabor.lists.Lists;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/**
 * Writes one voice, bar after bar: note values, rests and tuplets. Strokes that are held over a
 * barline go on in the next bar, so bars must come in order.
 */
final class VoiceWriter {
  private final Groove groove;
  private final Snap snap;
  private final Holds holds;
  private final Map<Integer, List<Time>> heldEnds;
  private final Map<Integer, List<Stroke>> strokes = new HashMap<>();
  private final List<Stroke> sounding = new ArrayList<>();
  private int bar;
  private Map<Time, List<Stroke>> struckAt = Map.of();
  private List<Draft> drafts = new ArrayList<>();

  /**
   * One written bar.
   *
   * @param drafts in order; empty if the voice is silent in it
   * @param regions how its beats were taken together
   * @param edges where groups inside tuplets meet
   */
  record Result(List<Draft> drafts, List<BeatSpan> regions, NavigableSet<Time> edges) {}

  /**
   * A writer of one voice.
   *
   * @param written the strokes of that voice as they are written
   */
  VoiceWriter(Groove groove, Holds holds, Voice voice, List<Stroke> written) {
    this.groove = groove;
    this.snap = Snap.of(groove);
    this.holds = holds;
    this.heldEnds = holds.endsByBar(voice);
    for (Stroke stroke : written) {
      Time bar = groove.meter(stroke.bar()).bar();
      Time first = stroke.bar() == 0 ? bar.minus(groove.pickup()) : Time.ZERO;
      if (first.compareTo(stroke.at()) <= 0 && stroke.at().before(bar)) {
        strokes.computeIfAbsent(stroke.bar(), none -> new ArrayList<>()).add(stroke);
      }
    }
  }

  /** True if the voice has no stroke in the whole section. */
  boolean isSilent() {
    return strokes.isEmpty();
  }

  /** Writes the next bar. */
  Result write(int number) {
    bar = number;
    drafts = new ArrayList<>();
    Meter meter = groove.meter(number);
    Time start = number == 0 ? meter.bar().minus(groove.pickup()) : Time.ZERO;
    List<Stroke> here = strokes.getOrDefault(number, List.of());
    List<Onset> marks = marks(here);
    NavigableSet<Time> edges = new TreeSet<>();
    stopBy(start);
    if (marks.isEmpty() && sounding.isEmpty() && number != 0) {
      return new Result(List.of(), List.of(), edges);
    }
    List<BeatSpan> regions = BeatSpan.of(meter, snap, meter.beatAt(start), marks, here);
    for (int i = 0; i < regions.size(); ) {
      BeatSpan region = regions.get(i);
      int taken = together(regions, i);
      RhythmNode node;
      if (taken == 1) {
        node = Planner.plan(region.stretch(), region.beats() == 1, edges);
      } else {
        node = new RhythmNode(null, region.stretch().length().times(taken));
        if (!region.isEmpty()) {
          node.add(Time.ZERO, null);
        }
      }
      write(node, region.stretch().start(), Time.ONE, List.of());
      i += taken;
    }
    return new Result(drafts, regions, edges);
  }

  private List<Onset> marks(List<Stroke> here) {
    struckAt = new HashMap<>();
    Meter meter = groove.meter(bar);
    List<Onset> marks = new ArrayList<>();
    for (Stroke stroke : here) {
      struckAt.computeIfAbsent(stroke.at(), none -> new ArrayList<>()).add(stroke);
      marks.add(Onset.of(snap, stroke, meter));
    }
    Set<Time> beats = new HashSet<>();
    for (int i = 0; i < meter.beatCount(); i++) {
      beats.add(meter.beatStart(i));
    }
    for (Time end : heldEnds.getOrDefault(bar, List.of())) {
      if (!beats.contains(end) && !struckAt.containsKey(end)) {
        marks.add(Onset.bare(end));
      }
    }
    marks.sort((a, b) -> a.at().compareTo(b.at()));
    return marks;
  }

  /**
   * How many regions one sign can stand for: silent beats that a longer rest covers, or the beats
   * that a held stroke fills.
   */
  private int together(List<BeatSpan> regions, int first) {
    BeatSpan region = regions.get(first);
    Time start = region.stretch().start();
    if (region.beats() != 1
        || Lists.any(region.stretch().marks(), mark -> !mark.at().equals(start))) {
      return 1;
    }
    stopBy(start);
    List<Stroke> heard = new ArrayList<>(sounding);
    heard.addAll(Lists.filter(struckAt.getOrDefault(start, List.of()), holds::isHeld));
    if (heard.isEmpty() && !region.isEmpty()) {
      return 1;
    }
    Time until =
        heard.isEmpty()
            ? groove.length().plus(Time.ONE)
            : Collections.min(Lists.map(heard, holds::end));
    int free = 0;
    while (first + free < regions.size()
        && regions.get(first + free).beats() == 1
        && (free == 0 || regions.get(first + free).isEmpty())
        && absolute(regions.get(first + free).stretch().end()).compareTo(until) <= 0) {
      free++;
    }
    for (int count = free; count > 1; count--) {
      if (isOneSign(region.first(), count, !heard.isEmpty())) {
        return count;
      }
    }
    return 1;
  }

  /** True if one note or rest may stand for so many beats from there on. */
  private boolean isOneSign(int first, int count, boolean note) {
    Meter meter = groove.meter(bar);
    Time length = meter.beat(first).times(count);
    boolean single = length.num() == 1 || length.num() == 3;
    if (!meter.isEven() || !single || length.compareTo(NoteValues.LONGEST) > 0) {
      return false;
    }
    int beats = meter.beatCount();
    boolean aligned = Integer.bitCount(count) == 1 && first % count == 0 && beats % 3 != 0;
    boolean small = length.compareTo(Written.Type.QUARTER.length()) <= 0;
    return (aligned && (beats % count == 0 || small)) || (note && first == 0);
  }

  private Time absolute(Time at) {
    return groove.position(bar, at);
  }

  private void stopBy(Time at) {
    if (!sounding.isEmpty()) {
      Time now = absolute(at);
      sounding.removeIf(stroke -> holds.end(stroke).compareTo(now) <= 0);
    }
  }

  private void write(RhythmNode node, Time origin, Time factor, List<RhythmNode> around) {
    List<RhythmNode> tuplets = around;
    if (node.isTuplet()) {
      tuplets = new ArrayList<>(around);
      tuplets.add(node);
    }
    Frame frame = new Frame(node.length());
    Time at = Time.ZERO;
    List<Stroke> struck = List.of();
    for (RhythmNode.Item item : node.items()) {
      fill(new Gap(frame, origin, factor, tuplets), at, item.at(), struck);
      Time place = origin.plus(item.at().times(factor));
      RhythmNode inner = item.inner();
      if (inner == null) {
        at = item.at();
        struck = struckAt.getOrDefault(place, List.of());
      } else {
        write(inner, place, factor.times(inner.factor()), tuplets);
        at = item.at().plus(inner.length().times(inner.factor()));
        struck = List.of();
      }
    }
    fill(new Gap(frame, origin, factor, tuplets), at, node.length(), struck);
  }

  /** The surroundings of a piece of time. */
  private record Gap(Frame frame, Time origin, Time factor, List<RhythmNode> tuplets) {
    Time place(Time written) {
      return origin.plus(written.times(factor));
    }
  }

  /** Fills the time up to the next sign: with what is struck, with what is held, or rests. */
  private void fill(Gap gap, Time from, Time to, List<Stroke> struck) {
    if (from.equals(to)) {
      return;
    }
    stopBy(gap.place(from));
    Time at = from;
    List<Stroke> fresh = struck;
    while (at.before(to) && !(fresh.isEmpty() && sounding.isEmpty())) {
      List<Stroke> held = List.copyOf(sounding);
      sounding.addAll(Lists.filter(fresh, holds::isHeld));
      Written written = gap.frame().note(at, to.minus(at));
      Time next = at.plus(written.length());
      stopBy(gap.place(next));
      add(gap, at, written, fresh, held);
      at = next;
      fresh = List.of();
    }
    for (Written rest : gap.frame().rests(at, to.minus(at))) {
      add(gap, at, rest, List.of(), List.of());
      at = at.plus(rest.length());
    }
  }

  private void add(Gap gap, Time at, Written written, List<Stroke> struck, List<Stroke> held) {
    drafts.add(
        new Draft(
            gap.place(at),
            written.length().times(gap.factor()),
            written,
            gap.tuplets(),
            List.copyOf(struck),
            held,
            List.copyOf(sounding)));
  }
}
