package tabor.notation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiFunction;
import tabor.cores.SpareCores;
import tabor.groove.CountLabels;
import tabor.groove.Groove;
import tabor.groove.Snap;
import tabor.groove.Stroke;
import tabor.lists.Lists;
import tabor.notation.Event.Chord;
import tabor.notation.Event.Rest;
import tabor.notation.Event.Rest.Show;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/**
 * Writes a section in notes, in the manner of drum kit music: hands and feet are two voices, a
 * stroke lasts to the next one of its voice or to the end of its beat, and beams show the beats.
 */
public final class Speller {
  private final Groove groove;
  private final Snap snap;
  private final NoteSigns signs;
  private final RollWriting rolls;
  private final Voicing voicing;
  private final Map<Integer, List<Stroke>> strokesOfBar = new HashMap<>();

  private Speller(Groove groove, Set<Stroke> changed) {
    this.groove = groove;
    this.voicing = Voicing.of(groove);
    this.snap = Snap.of(groove);
    this.rolls = new RollWriting(groove);
    this.signs = new NoteSigns(groove, changed, rolls, voicing);
    for (Stroke stroke : groove.strokes()) {
      strokesOfBar.computeIfAbsent(stroke.bar(), none -> new ArrayList<>()).add(stroke);
    }
  }

  /** Spells a section with nothing marked as changed. */
  public static Score spell(Groove groove) {
    return spell(groove, Set.of());
  }

  /**
   * Spells a section.
   *
   * @param changed the strokes to mark as changed
   */
  public static Score spell(Groove groove, Set<Stroke> changed) {
    return new Speller(groove, changed).score();
  }

  /** Both voices, written bar by bar. */
  private record Voices(
      VoiceWriter hands, VoiceWriter feet, Holds holds, List<VoiceWriter.Result[]> bars) {}

  private Score score() {
    Voices written = write();
    // What slashes cannot say is written out, which may cut the notes around it.
    while (needsMore(written)) {
      written = write();
    }
    Voices last = written;
    int first = groove.firstBar();
    return new Score(
        groove,
        SpareCores.map(
            Lists.numbers(groove.bars() - first + 1), index -> bar(first + index, last)));
  }

  private boolean needsMore(Voices written) {
    boolean more = false;
    for (VoiceWriter.Result[] bar : written.bars()) {
      for (VoiceWriter.Result voice : bar) {
        more |= rolls.spellOut(voice.drafts(), written.holds());
      }
    }
    return more;
  }

  private Voices write() {
    List<Stroke> strokes = rolls.strokes();
    Holds holds = new Holds(groove, strokes, voicing);
    VoiceWriter hands = writer(Voice.HANDS, strokes, holds);
    VoiceWriter feet = writer(Voice.FEET, strokes, holds);
    List<VoiceWriter.Result[]> bars = new ArrayList<>();
    for (int number = groove.firstBar(); number <= groove.bars(); number++) {
      bars.add(new VoiceWriter.Result[] {hands.write(number), feet.write(number)});
    }
    return new Voices(hands, feet, holds, bars);
  }

  private VoiceWriter writer(Voice voice, List<Stroke> strokes, Holds holds) {
    List<Stroke> own = Lists.filter(strokes, stroke -> voicing.of(stroke) == voice);
    return new VoiceWriter(groove, holds, voice, own);
  }

  private Bar bar(int number, Voices written) {
    Meter meter = groove.meter(number);
    Time whole = meter.bar();
    Time length = number == 0 ? groove.pickup() : whole;
    VoiceWriter.Result[] results = written.bars().get(number - groove.firstBar());
    VoiceWriter.Result up = results[0];
    VoiceWriter.Result down = results[1];
    VoiceWriter hands = written.hands();
    VoiceWriter feet = written.feet();
    BiFunction<Time, Time, Show> upper = shows(up, down, hands, feet, Show.SHARED);
    BiFunction<Time, Time, Show> lower = shows(down, up, feet, hands, Show.HIDDEN);
    if (voicing.isRow(number) && down.drafts().isEmpty()) {
      // One voice in this bar: it alone has rests.
      upper = (start, lasts) -> Show.SHARED;
      lower = (start, lasts) -> Show.HIDDEN;
    }
    List<Event> above = events(Voice.HANDS, meter, up, length, upper);
    List<Event> below = events(Voice.FEET, meter, down, length, lower);
    return new Bar(
        number,
        groove.repeats().contains(number),
        whole.minus(length),
        length,
        above,
        countedAbove(above, below),
        CountLines.of(
            meter, CountLabels.of(groove), snap, strokesOfBar.getOrDefault(number, List.of())));
  }

  private static BiFunction<Time, Time, Show> shows(
      VoiceWriter.Result own,
      VoiceWriter.Result other,
      VoiceWriter line,
      VoiceWriter otherLine,
      Show together) {
    if (line.isSilent() && (!otherLine.isSilent() || together == Show.HIDDEN)) {
      return (start, length) -> Show.HIDDEN;
    }
    if (otherLine.isSilent()) {
      return (start, length) -> Show.SHARED;
    }
    if (own.drafts().isEmpty()) {
      return (start, length) -> other.drafts().isEmpty() ? together : Show.OWN;
    }
    Set<List<Time>> rests = new HashSet<>();
    for (Draft draft : other.drafts()) {
      if (draft.isRest()) {
        rests.add(List.of(draft.start(), draft.length()));
      }
    }
    return (start, length) -> rests.contains(List.of(start, length)) ? together : Show.OWN;
  }

  private List<Event> events(
      Voice voice,
      Meter meter,
      VoiceWriter.Result written,
      Time length,
      BiFunction<Time, Time, Show> shows) {
    List<Draft> drafts = written.drafts();
    if (drafts.isEmpty()) {
      Written whole = new Written(Written.Type.WHOLE, 0);
      Show show = shows.apply(Time.ZERO, length);
      return List.of(new Rest(Time.ZERO, length, whole, List.of(), show, true));
    }
    Extents extents = new Extents(drafts);
    Beamer beamer = new Beamer(meter, written, extents);
    IdentityHashMap<RhythmNode, Tuplet> known = new IdentityHashMap<>();
    List<Event> events = new ArrayList<>();
    for (int i = 0; i < drafts.size(); i++) {
      Draft draft = drafts.get(i);
      List<TupletPlace> tuplets = new ArrayList<>();
      for (RhythmNode node : draft.tuplets()) {
        Tuplet tuplet = known.computeIfAbsent(node, some -> tuplet(some, beamer));
        tuplets.add(new TupletPlace(tuplet, extents.first(node) == i, extents.last(node) == i));
      }
      events.add(
          draft.isRest()
              ? rest(draft, tuplets, shows)
              : chord(draft, tuplets, beamer.beams(i), voice));
    }
    return events;
  }

  private static Tuplet tuplet(RhythmNode node, Beamer beamer) {
    RhythmNode.Ratio ratio = node.ratio();
    return new Tuplet(ratio.actual(), ratio.normal(), ratio.unit(), beamer.needsBracket(node));
  }

  private static Rest rest(
      Draft draft, List<TupletPlace> tuplets, BiFunction<Time, Time, Show> shows) {
    Show show = shows.apply(draft.start(), draft.length());
    return new Rest(draft.start(), draft.length(), draft.written(), tuplets, show, false);
  }

  private Chord chord(Draft draft, List<TupletPlace> tuplets, List<Beam> beams, Voice voice) {
    return new Chord(
        draft.start(),
        draft.length(),
        draft.written(),
        tuplets,
        beams,
        voice,
        signs.notes(draft),
        signs.count(draft),
        signs.sticking(draft));
  }

  /** A place that both voices strike is counted once, above. */
  private static List<Event> countedAbove(List<Event> above, List<Event> below) {
    Set<Time> counted = new HashSet<>();
    for (Event event : above) {
      event
          .chord()
          .filter(chord -> !chord.count().isEmpty())
          .ifPresent(c -> counted.add(c.start()));
    }
    List<Event> events = new ArrayList<>();
    for (Event event : below) {
      events.add(
          event
              .chord()
              .filter(chord -> counted.contains(chord.start()))
              .<Event>map(chord -> chord.uncounted())
              .orElse(event));
    }
    return events;
  }
}
