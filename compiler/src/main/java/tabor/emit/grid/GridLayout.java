package tabor.emit.grid;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import tabor.emit.grid.GridBar.Cell;
import tabor.emit.grid.GridBar.Column;
import tabor.groove.CountLabels;
import tabor.groove.Groove;
import tabor.groove.Snap;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.lists.Lists;
import tabor.rhythm.Meter;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;
import tabor.words.Words;

/**
 * Lays a section out: which parts have a row, and which places a column.
 *
 * <p>A part shows a dot at the silent places of its own words only, so that a row reads in its own
 * division even where another part divides the same beat otherwise. Where all words of a bar fit
 * one fine division, every beat gets the columns of that division and the bar is regular.
 */
final class GridLayout {
  /** The finest division that is laid out regularly; beyond it bars grow too wide. */
  private static final long MOST_REGULAR = 6;

  private final Groove groove;
  private final Words words;
  private final Snap snap;
  private final List<Surface> parts;
  private final boolean handsShown;
  private final boolean feetShown;
  private final boolean countsShown;
  private final Map<Integer, List<Stroke>> byBar = new HashMap<>();
  private final Map<String, List<Time[]>> rolls = new HashMap<>();

  /**
   * A section laid out.
   *
   * @param parts the names of the rows
   * @param sticks the names of the rows of sticking
   * @param bars all bars
   */
  record Sheet(List<String> parts, List<String> sticks, List<GridBar> bars) {}

  private GridLayout(Groove groove, Words words, boolean everyLimb) {
    this.groove = groove;
    this.words = words;
    this.snap = Snap.of(groove);
    this.parts = parts(groove);
    this.handsShown =
        (everyLimb || groove.setting().showSticking())
            && Lists.any(groove.strokes(), stroke -> stroke.limb().isHand());
    this.feetShown =
        everyLimb
            ? Lists.any(groove.strokes(), stroke -> !stroke.limb().isHand())
            : groove.setting().showSticking() && feetMatter(groove);
    this.countsShown = everyLimb || groove.setting().showCounts();
    for (Stroke stroke : groove.strokes()) {
      byBar.computeIfAbsent(stroke.bar(), bar -> new ArrayList<>()).add(stroke);
      if (GridSigns.goesOn(snap, stroke)) {
        Time start = groove.position(stroke);
        rolls
            .computeIfAbsent(stroke.surface().name(), name -> new ArrayList<>())
            .add(new Time[] {start, start.plus(stroke.length())});
      }
    }
  }

  /** Lays out all bars. */
  static Sheet of(Groove groove, Words words) {
    GridLayout layout = new GridLayout(groove, words, false);
    return new Sheet(Lists.map(layout.parts, words::label), layout.stickNames(), layout.bars());
  }

  /** Lays out all bars without their parts: counts, hands and feet, whatever else is shown. */
  static Sheet limbs(Groove groove, Words words) {
    GridLayout layout = new GridLayout(groove, words, true);
    List<GridBar> bars = new ArrayList<>();
    for (GridBar bar : layout.bars()) {
      List<Column> columns =
          Lists.map(
              bar.columns(),
              c -> new Column(c.startsBeat(), c.beat(), c.counts(), List.of(), c.sticks()));
      bars.add(new GridBar(bar.number(), bar.repeat(), columns));
    }
    return new Sheet(List.of(), layout.stickNames(), bars);
  }

  private List<GridBar> bars() {
    List<GridBar> bars = new ArrayList<>();
    for (int bar = groove.firstBar(); bar <= groove.bars(); bar++) {
      bars.add(bar(bar));
    }
    return bars;
  }

  /** Parts from the top of the staff down, hands before feet. */
  private static List<Surface> parts(Groove groove) {
    Map<String, Surface> used = new HashMap<>();
    groove.strokes().forEach(stroke -> used.put(stroke.surface().name(), stroke.surface()));
    List<String> order = groove.setting().kit().surfaceNames();
    List<Surface> sorted = new ArrayList<>(used.values());
    sorted.sort((a, b) -> compare(a, b, order));
    return sorted;
  }

  private static int compare(Surface a, Surface b, List<String> order) {
    if (a.isFoot() != b.isFoot()) {
      return a.isFoot() ? 1 : -1;
    }
    int byPlace = Integer.compare(b.place().halfSpaces(), a.place().halfSpaces());
    int byKit = Integer.compare(order.indexOf(a.name()), order.indexOf(b.name()));
    return byPlace != 0 ? byPlace : byKit != 0 ? byKit : a.name().compareTo(b.name());
  }

  /** True unless the right foot has the kick and the left the hi-hat, as everybody expects. */
  private static boolean feetMatter(Groove groove) {
    boolean mirrored = groove.setting().kit().leftHanded();
    return Lists.any(
        groove.strokes(),
        stroke -> {
          boolean kick = stroke.surface().sort() == Surface.Sort.KICK;
          Limb usual = kick != mirrored ? Limb.RIGHT_FOOT : Limb.LEFT_FOOT;
          return !stroke.limb().isHand() && stroke.limb() != usual;
        });
  }

  /** Into how many columns every beat of a bar can be laid out; 0 if they differ too much. */
  private long regular(List<Stroke> strokes) {
    long parts = 1;
    for (Stroke stroke : strokes) {
      long own = WordPlaces.fineness(snap.slot(stroke));
      if (own == 0 || own > MOST_REGULAR) {
        return 0;
      }
      parts = Time.lcm(parts, own);
      if (parts > MOST_REGULAR) {
        return 0;
      }
    }
    return parts;
  }

  private List<String> stickNames() {
    List<String> names = new ArrayList<>();
    if (handsShown) {
      names.add(words.text("limb.hands"));
    }
    if (feetShown) {
      names.add(words.text("limb.feet"));
    }
    return names;
  }

  private GridBar bar(int number) {
    List<Stroke> strokes = byBar.getOrDefault(number, List.of());
    Meter meter = groove.meter(number);
    List<Integer> beats = beats(number);
    List<Slot> slots = Lists.map(strokes, snap::slot);
    List<Map<Time, String>> counts =
        CountRows.of(meter, CountLabels.of(groove), beats, slots, countsShown);
    Map<String, Set<Time>> own = new HashMap<>();
    Set<Time> places = new TreeSet<>();
    long regular = regular(strokes);
    for (int beat : beats) {
      places.add(meter.beatStart(beat));
      for (int i = 1; i < regular; i++) {
        places.add(meter.beatStart(beat).plus(meter.beat(beat).times(i).over(regular)));
      }
    }
    for (Surface part : parts) {
      Set<Time> ofPart = ownPlaces(part, meter, strokes, beats);
      own.put(part.name(), ofPart);
      places.addAll(ofPart);
    }
    if (countsShown) {
      counts.forEach(row -> places.addAll(row.keySet()));
    }
    Time first = meter.beatStart(beats.get(0));
    places.removeIf(place -> place.before(first));
    List<Column> columns = new ArrayList<>();
    Map<Time, List<Stroke>> byPlace = new HashMap<>();
    strokes.forEach(one -> byPlace.computeIfAbsent(one.at(), at -> new ArrayList<>(2)).add(one));
    for (Time place : places) {
      List<Stroke> there = byPlace.getOrDefault(place, List.of());
      columns.add(column(number, place, there, counts, own));
    }
    return new GridBar(number, groove.repeats().contains(number), columns);
  }

  /** The beats of a bar; in a pickup the last ones, a beat that it cuts included. */
  private List<Integer> beats(int bar) {
    List<Integer> beats = new ArrayList<>();
    Meter meter = groove.meter(bar);
    Time start = bar == 0 ? meter.bar().minus(groove.pickup()) : Time.ZERO;
    for (int beat = 0; beat < meter.beatCount(); beat++) {
      if (start.before(meter.beatStart(beat + 1))) {
        beats.add(beat);
      }
    }
    return beats;
  }

  /** Where a part has strokes or dots: the places of its words, and beats that it is silent in. */
  private Set<Time> ownPlaces(
      Surface part, Meter meter, List<Stroke> strokes, List<Integer> beats) {
    Set<Time> places = new TreeSet<>();
    Set<Slot> words = new HashSet<>();
    for (Stroke stroke : strokes) {
      if (stroke.surface().name().equals(part.name())) {
        Slot word = WordPlaces.first(snap.slot(stroke));
        if (words.add(word)) {
          places.addAll(WordPlaces.ofWord(word, meter));
        }
        places.add(stroke.at());
      }
    }
    for (int beat : beats) {
      Time start = meter.beatStart(beat);
      Time end = meter.beatStart(beat + 1);
      if (!Lists.any(places, place -> !place.before(start) && place.before(end))) {
        places.add(start);
      }
    }
    return places;
  }

  private Column column(
      int bar,
      Time place,
      List<Stroke> strokes,
      List<Map<Time, String>> counts,
      Map<String, Set<Time>> own) {
    Map<String, List<Stroke>> here = new TreeMap<>();
    for (Stroke stroke : strokes) {
      here.computeIfAbsent(stroke.surface().name(), name -> new ArrayList<>()).add(stroke);
    }
    List<Cell> cells = new ArrayList<>();
    StringBuilder hands = new StringBuilder();
    StringBuilder feet = new StringBuilder();
    for (Surface part : parts) {
      List<Stroke> both = here.getOrDefault(part.name(), List.of());
      if (!both.isEmpty()) {
        cells.add(GridSigns.cell(both));
      } else if (!own.get(part.name()).contains(place)) {
        cells.add(Cell.NONE);
      } else {
        cells.add(inRoll(part, bar, place) ? Cell.GOES_ON : Cell.SILENT);
      }
      both.forEach(s -> (s.limb().isHand() ? hands : feet).append(s.limb().letter()));
    }
    List<String> sticks = new ArrayList<>();
    if (handsShown) {
      sticks.add(hands.toString());
    }
    if (feetShown) {
      sticks.add(feet.toString());
    }
    Meter meter = groove.meter(bar);
    int beat = meter.beatAt(place);
    return new Column(
        meter.beatStart(beat).equals(place),
        beat + 1,
        Lists.map(counts, row -> row.getOrDefault(place, "")),
        cells,
        sticks);
  }

  private boolean inRoll(Surface part, int bar, Time place) {
    Time position = groove.position(bar, place);
    return Lists.any(
        rolls.getOrDefault(part.name(), List.of()),
        roll -> roll[0].before(position) && position.before(roll[1]));
  }
}
