package tabor.perform;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Loudness;
import tabor.groove.Part;
import tabor.lists.Lists;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/**
 * A segment that is not yet placed in time. The components are those of {@link Segment}.
 *
 * @param until where this time through stops, measured as {@code from} is: nothing sounds there or
 *     later; null for the section's own end
 * @param manner how it is played
 * @param phase how many bars the click has counted before bar 1
 * @param signs words that stand at its start
 */
record PlannedSegment(
    Segment.Kind kind,
    @Nullable Groove groove,
    Tempo tempo,
    Feel feel,
    int bars,
    Time from,
    Time to,
    @Nullable Time until,
    Manner manner,
    long phase,
    List<Words> signs) {
  /**
   * How something is played.
   *
   * @param click what the click does under it
   * @param without the parts that are left to the student
   * @param over the dynamic over what the section says; null for none
   */
  record Manner(Chart.SetClick click, List<Part> without, @Nullable Loudness over) {
    /** All parts as written, no click. */
    static final Manner PLAIN = new Manner(new Chart.SetClick(Chart.Click.OFF), List.of(), null);
  }

  /** Words at a place: a rehearsal mark or a cue. */
  record Words(boolean mark, String text) {}

  /** Copies the list. */
  PlannedSegment {
    signs = List.copyOf(signs);
  }

  /** A whole one that starts with no words. */
  private PlannedSegment(
      Segment.Kind kind,
      @Nullable Groove groove,
      Tempo tempo,
      Feel feel,
      int bars,
      Time from,
      Time to,
      Manner manner) {
    this(kind, groove, tempo, feel, bars, from, to, null, manner, 0, List.of());
  }

  /**
   * So many bars of count-in, in the first meter of what it counts in. It leaves {@code pickup} to
   * what comes after it.
   */
  static PlannedSegment countIn(int bars, @Nullable Groove like, Tempo tempo, Time pickup) {
    Meters meters = meters(like);
    Time left = pickup.before(meters.first().bar()) ? pickup : Time.ZERO;
    return new PlannedSegment(
        Segment.Kind.COUNT_IN,
        like,
        tempo,
        Feel.STRAIGHT,
        bars,
        meters.between(1 - bars, 1).negate(),
        left.negate(),
        Manner.PLAIN);
  }

  /** A section once, with or without its pickup. */
  static PlannedSegment section(Chart.Turn turn, boolean pickup, Manner manner) {
    Groove groove = turn.groove();
    return new PlannedSegment(
        Segment.Kind.SECTION,
        groove,
        turn.tempo(),
        turn.feel(),
        groove.bars(),
        pickup ? groove.pickup().negate() : Time.ZERO,
        groove.meters().length(groove.bars()),
        manner);
  }

  /** So many bars of silence. */
  static PlannedSegment rest(int bars, @Nullable Groove like, Tempo tempo, Manner manner) {
    return new PlannedSegment(
        Segment.Kind.REST,
        like,
        tempo,
        Feel.STRAIGHT,
        bars,
        Time.ZERO,
        meters(like).length(bars),
        manner);
  }

  /** Silence by the clock: so many seconds, counted as quarter notes of a second each. */
  static PlannedSegment pause(Time seconds) {
    return new PlannedSegment(
        Segment.Kind.PAUSE,
        null,
        new Tempo(Time.of(1, 4), Time.of(60)),
        Feel.STRAIGHT,
        1,
        Time.ZERO,
        seconds.over(4),
        Manner.PLAIN);
  }

  /** The strokes at a place of this one, ringing so long. */
  PlannedSegment held(Time at, Time length) {
    return as(Segment.Kind.HOLD, at, at.plus(length));
  }

  /** The bars of this stretch, left to the student. */
  PlannedSegment yours() {
    return as(Segment.Kind.YOURS, Time.max(Time.ZERO, from), to);
  }

  private PlannedSegment as(Segment.Kind other, Time first, Time last) {
    return new PlannedSegment(
        other, groove, tempo, feel, bars, first, last, null, manner, phase, List.of());
  }

  /** A stretch of it after which this time through goes on. */
  PlannedSegment piece(Time first, Time last) {
    return with(first, last, until, tempo, phase, first.equals(from) ? signs : List.of());
  }

  /** A stretch of it after which something else is played. */
  PlannedSegment cut(Time first, Time last) {
    Time end = last.equals(to) ? until : last;
    return with(first, last, end, tempo, phase, first.equals(from) ? signs : List.of());
  }

  PlannedSegment at(Tempo other) {
    return with(from, to, until, other, phase, signs);
  }

  PlannedSegment counted(long bars) {
    return with(from, to, until, tempo, bars, signs);
  }

  /** The same after some more words. */
  PlannedSegment after(List<Words> words) {
    List<Words> all = new ArrayList<>(words);
    all.addAll(signs);
    return with(from, to, until, tempo, phase, all);
  }

  /** The same without words, for another time through. */
  PlannedSegment silent() {
    return signs.isEmpty() ? this : with(from, to, until, tempo, phase, List.of());
  }

  private PlannedSegment with(
      Time first, Time last, @Nullable Time end, Tempo speed, long count, List<Words> words) {
    return new PlannedSegment(
        kind, groove, speed, feel, bars, first, last, end, manner, count, words);
  }

  Segment at(Time start, long picos) {
    return new Segment(kind, groove, meters(), tempo, feel, bars, from, to, start, picos);
  }

  Meters meters() {
    return meters(groove);
  }

  private static Meters meters(@Nullable Groove groove) {
    return groove == null ? Meters.of(Meter.COMMON) : groove.meters();
  }

  Time length() {
    return to.minus(from);
  }

  long picos() {
    return Clock.picos(length(), tempo);
  }

  /** How many bars begin in it; none in a count-in. */
  long barlines() {
    if (kind == Segment.Kind.HOLD) {
      return beginsBar() && from.sign() >= 0 && from.before(meters().length(bars)) ? 1 : 0;
    }
    if (!kind.hasBars() || to.sign() <= 0) {
      return 0;
    }
    return barlinesBefore(to) - (from.sign() <= 0 ? 0 : barlinesBefore(from));
  }

  /** Lines of bar 1 and later before a place above zero. */
  private long barlinesBefore(Time place) {
    Meters.Place found = meters().place(place);
    return found.at().sign() == 0 ? found.bar() - 1L : found.bar();
  }

  /** How many strokes of the section stand in it. */
  long strokes() {
    Groove own = groove;
    if (kind != Segment.Kind.SECTION || own == null) {
      return 0;
    }
    boolean whole = from.sign() <= 0 && to.equals(meters().length(bars));
    return whole
        ? own.strokes().size()
        : Lists.count(
            own.strokes(),
            stroke -> {
              Time at = meters().start(stroke.bar()).plus(stroke.at());
              return !at.before(from) && at.before(to);
            });
  }

  /** True if it begins at a barline or in a pickup. */
  boolean beginsBar() {
    return from.sign() <= 0 || meters().place(from).at().sign() == 0;
  }
}
