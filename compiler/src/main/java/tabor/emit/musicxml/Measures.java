package tabor.emit.musicxml;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tabor.emit.musicxml.ScoreFile.Attributes;
import tabor.emit.musicxml.ScoreFile.Backup;
import tabor.emit.musicxml.ScoreFile.Barline;
import tabor.emit.musicxml.ScoreFile.Direction;
import tabor.emit.musicxml.ScoreFile.DirectionKind;
import tabor.emit.musicxml.ScoreFile.Element;
import tabor.emit.musicxml.ScoreFile.Measure;
import tabor.emit.musicxml.ScoreFile.NewSystem;
import tabor.emit.musicxml.ScoreFile.Swing;
import tabor.emit.musicxml.ScoreFile.TimeSignature;
import tabor.groove.Groove;
import tabor.notation.Bar;
import tabor.notation.Event;
import tabor.notation.Event.Rest;
import tabor.notation.Score;
import tabor.notation.Voice;
import tabor.notation.Written;
import tabor.perform.GradualTempo;
import tabor.perform.Volume;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/** Writes sections one after another and keeps in mind what holds from before. */
final class Measures {
  private final Instruments instruments;
  private final LyricLines lines;
  private final @Nullable BigInteger forAll;
  private final List<Measure> measures = new ArrayList<>();
  private @Nullable TimeSignature time;
  private @Nullable Tempo tempo;
  private Feel feel = Feel.STRAIGHT;
  private @Nullable Swing swing;
  private boolean barRepeat;
  private final HeardTempo heard = new HeardTempo();

  /**
   * Some bars of a section.
   *
   * @param from the number of the first
   * @param to the number of the last
   */
  record Stretch(int from, int to) {
    /** All of them, the pickup with them. */
    static final Stretch ALL = new Stretch(0, Integer.MAX_VALUE);

    boolean holds(int bar) {
      return from <= bar && bar <= to;
    }
  }

  /**
   * How a section is written.
   *
   * @param head what stands above its first bar
   * @param restate true to write time and tempo even where they stay
   * @param pickup false to leave its pickup out
   * @param opens true if a repeat starts with it
   * @param aroundPickup true if its pickup is repeated too
   * @param closes how often what is repeated is played in all; 0 where no repeat ends
   * @param holds true if its last stroke has a hold sign
   * @param bars which of its bars are written
   * @param alone true for a section by itself: a short fill is then its pickup and no more
   */
  record Plan(
      List<DirectionKind> head,
      Tempo tempo,
      Feel feel,
      boolean restate,
      boolean pickup,
      boolean opens,
      boolean aroundPickup,
      long closes,
      boolean holds,
      Stretch bars,
      boolean alone) {
    /** Once, as it stands. */
    static Plan once(List<DirectionKind> head, Groove groove) {
      Groove.Setting setting = groove.setting();
      return new Plan(
          head,
          setting.tempo(),
          setting.feel(),
          false,
          true,
          false,
          false,
          0,
          false,
          Stretch.ALL,
          true);
    }
  }

  /**
   * @param forAll the divisions that serve every measure; null if each measure has its own
   */
  Measures(Instruments instruments, LyricLines lines, @Nullable BigInteger forAll) {
    this.instruments = instruments;
    this.lines = lines;
    this.forAll = forAll;
  }

  /** The tempo beat by beat, where it changes gradually. */
  HeardTempo heard() {
    return heard;
  }

  /** A tempo that is written, and heard. */
  private Direction marked(Tempo at) {
    tempo = at;
    heard.marked(at);
    return above(Marks.metronome(at));
  }

  List<Measure> list() {
    return measures;
  }

  void section(Score score, Plan plan) {
    Groove groove = score.groove();
    Volume volume = new Volume(groove);
    RollTies ties = new RollTies(score);
    int skipped = groove.firstBar() == 0 && !plan.pickup ? 1 : 0;
    List<Bar> all = plan.alone ? score.printed() : score.bars();
    List<Bar> bars = all.subList(skipped, all.size());
    bars = bars.stream().filter(bar -> plan.bars.holds(bar.number())).toList();
    Event held = plan.holds ? lastStroke(bars) : null;
    int opening = plan.aroundPickup || !bars.get(0).isPickup() ? 0 : 1;
    for (int i = 0; i < bars.size(); i++) {
      Bar bar = bars.get(i);
      boolean last = i == bars.size() - 1;
      List<Element> elements = new ArrayList<>();
      if (i == 0 && !measures.isEmpty() && !plan.head.isEmpty()) {
        elements.add(new NewSystem());
      }
      if (plan.opens && i == opening) {
        elements.add(new Barline(true, "heavy-light", 1));
      }
      Meter meter = groove.meter(bar.number());
      BigInteger divisions = forAll == null ? own(bar, groove, meter) : forAll;
      // Where a repeat comes back to it from a bar of another meter, the time is said again.
      boolean restate = plan.restate || (plan.opens && groove.meters().size() > 1);
      attributes(meter, divisions, bar.repeat(), restate && i == 0, elements);
      if (i == 0) {
        head(plan, score, elements);
      }
      List<GradualTempo.Step> steps = heard.steps(meter, bar.isPickup(), tempo);
      voices(bar, groove, ties, volume, divisions, held, steps, elements);
      if (last) {
        elements.add(
            plan.closes > 0
                ? new Barline(false, "light-heavy", plan.closes)
                : new Barline(false, "light-light", 0));
      }
      measures.add(new Measure(bar.number(), bar.isPickup(), elements));
    }
  }

  private BigInteger own(Bar bar, Groove groove, Meter meter) {
    Divisions divisions = new Divisions().add(bar, groove);
    return (heard.changes() ? divisions.addBeats(meter) : divisions).common();
  }

  /**
   * Bars in which nothing is played.
   *
   * @param bars the meter of each
   * @param left how much of the last bar is left to what comes after it; less than a bar
   */
  void silence(List<Meter> bars, Time left, List<DirectionKind> head, @Nullable Tempo at) {
    silence(bars, left, head, at, false);
  }

  /**
   * Bars of a count-in, in which no gradual change goes on.
   *
   * @param left how much of the last bar is left to what comes after it; less than a bar
   */
  void countIn(List<Meter> bars, Time left, List<DirectionKind> head, Tempo at) {
    silence(bars, left, head, at, true);
  }

  private void silence(
      List<Meter> bars, Time left, List<DirectionKind> head, @Nullable Tempo at, boolean counts) {
    for (int i = 0; i < bars.size(); i++) {
      Meter meter = bars.get(i);
      boolean shorter = i == bars.size() - 1 && left.sign() > 0;
      List<Element> elements = new ArrayList<>();
      BigInteger divisions = forAll == null ? BigInteger.valueOf(16) : forAll;
      attributes(meter, divisions, false, false, elements);
      if (i == 0) {
        head.forEach(kind -> elements.add(above(kind)));
        if (at != null && !at.equals(tempo) && !heard.isWithinChange()) {
          elements.add(marked(at));
        } else if (at != null && counts) {
          // Within a change it is heard at the tempo of the beat after it, which no mark shows.
          heard.add(new GradualTempo.Step(Time.ZERO, at), Time.ZERO, divisions, elements);
        }
      }
      for (GradualTempo.Step step :
          counts ? List.<GradualTempo.Step>of() : heard.steps(meter, false, tempo)) {
        heard.add(step, Time.ZERO, divisions, elements);
      }
      Rest rest =
          new Rest(
              Time.ZERO,
              shorter ? meter.bar().minus(left) : meter.bar(),
              new Written(Written.Type.WHOLE, 0),
              List.of(),
              Rest.Show.SHARED,
              true);
      elements.add(NoteMaker.wholeBar(rest, divisions));
      measures.add(new Measure(shorter ? 0 : i + 1, shorter, elements));
    }
  }

  /** Ends a repeat after what stands there; without one, 0 times, draws the barline of an end. */
  void close(long times) {
    int end = measures.size() - 1;
    Measure last = measures.get(end);
    List<Element> elements = new ArrayList<>(last.elements());
    elements.removeIf(element -> element instanceof Barline barline && !barline.left());
    elements.add(new Barline(false, "light-heavy", times));
    measures.set(end, new Measure(last.number(), last.implicit(), elements));
  }

  /** Gives the last measure the barline of an end. */
  void finish() {
    List<Element> last = measures.get(measures.size() - 1).elements();
    boolean closed =
        last.get(last.size() - 1) instanceof Barline barline && barline.repeatTimes() > 0;
    if (!closed) {
      close(0);
    }
  }

  private void attributes(
      Meter meter, BigInteger divisions, boolean repeat, boolean restate, List<Element> into) {
    TimeSignature now = new TimeSignature(meter.upper(), meter.unit());
    boolean newTime = restate || !now.equals(time);
    boolean first = measures.isEmpty();
    boolean newDivisions = first || forAll == null;
    boolean turns = repeat != barRepeat;
    if (newTime || newDivisions || turns) {
      into.add(
          new Attributes(
              newDivisions ? divisions : null, newTime ? now : null, first, turns ? repeat : null));
    }
    time = now;
    barRepeat = repeat;
  }

  private void head(Plan plan, Score score, List<Element> into) {
    plan.head.forEach(kind -> into.add(above(kind)));
    if ((plan.restate || !plan.tempo.equals(tempo)) && !heard.isWithinChange()) {
      into.add(marked(plan.tempo));
    }
    Swing now = SwingMark.of(score, plan.feel);
    boolean same = plan.feel.equals(feel) || (plan.feel.isStraight() && feel.isStraight());
    if (!same || !Objects.equals(now, swing)) {
      into.add(above(Marks.feel(plan.feel, now, swing)));
    }
    feel = plan.feel;
    swing = now;
  }

  private static Direction above(DirectionKind kind) {
    return new Direction(kind, true, BigInteger.ZERO);
  }

  private void voices(
      Bar bar,
      Groove groove,
      RollTies ties,
      Volume volume,
      BigInteger divisions,
      @Nullable Event held,
      List<GradualTempo.Step> steps,
      List<Element> into) {
    List<Marks.Placed> marks = Marks.in(groove, bar);
    boolean silent = isHidden(bar.hands());
    boolean written = false;
    for (Voice voice : Voice.values()) {
      List<Event> events = bar.events(voice);
      // One voice at least stands in every measure, and the first of them carries the directions.
      if (isHidden(events) && !(voice == Voice.FEET && silent && !written)) {
        continue;
      }
      if (written) {
        into.add(new Backup(Divisions.of(bar.length(), divisions)));
      }
      NoteMaker maker =
          new NoteMaker(groove, bar.number(), ties, instruments, lines, volume, voice, divisions);
      int mark = 0;
      int step = 0;
      for (Event event : events) {
        for (;
            !written && step < steps.size() && steps.get(step).at().before(event.end());
            step++) {
          heard.add(steps.get(step), event.start(), divisions, into);
        }
        while (!written && mark < marks.size() && marks.get(mark).at().before(event.end())) {
          into.add(placed(marks.get(mark++), event.start(), divisions));
        }
        List<ScoreFile.Note> notes = maker.notes(event);
        if (event == held) {
          notes = new ArrayList<>(notes);
          notes.replaceAll(note -> note.grace() == null && !note.chord() ? note.hold() : note);
        }
        into.addAll(notes);
      }
      while (!written && mark < marks.size()) {
        Marks.Placed late = marks.get(mark++);
        into.add(new Direction(late.kind(), false, BigInteger.ZERO));
      }
      written = true;
    }
  }

  /** The last stroke of some bars, the hands' before the feet's; null if there is none. */
  private static @Nullable Event lastStroke(List<Bar> bars) {
    Event last = null;
    for (int i = bars.size() - 1; i >= 0 && last == null; i--) {
      for (Voice voice : Voice.values()) {
        for (Event event : bars.get(i).events(voice)) {
          if (event.chord().isPresent() && (last == null || last.start().before(event.start()))) {
            last = event;
          }
        }
      }
    }
    return last;
  }

  private static Direction placed(Marks.Placed mark, Time start, BigInteger divisions) {
    Time after = mark.at().minus(start);
    Time offset = after.sign() < 0 ? Time.ZERO : after;
    return new Direction(mark.kind(), false, Divisions.of(offset, divisions));
  }

  private static boolean isHidden(List<Event> events) {
    return events.stream().allMatch(Event::isHidden);
  }
}
