package tabor.groove;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tabor.lists.Lists;
import tabor.rhythm.Division;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;

/**
 * Swung eighths beside a triplet. Where, under swung eighths, one part divides a plain beat in
 * three and another in two, the words of two snap to the triplet: their first slot lasts two thirds
 * of the beat and their second the last third, and groups inside divide these. So strokes that
 * sound together are one place on the page, in the grid, in lists and for the checks.
 *
 * <p>It is worked out from a finished section. A stroke that snaps keeps its own slot, by which it
 * is named and edited; what changes is its place and its length. For the readers of a section this
 * says which slot such a stroke is counted and spelled in.
 */
public final class Snap {
  private static final Time HALF = Time.of(1, 2);
  private static final Time TWO_THIRDS = Time.of(2, 3);

  private record Beat(int bar, int beat) {}

  private final Meters meters;
  private final Set<Beat> beats;

  private Snap(Meters meters, Set<Beat> beats) {
    this.meters = meters;
    this.beats = beats;
  }

  /** How the strokes of a finished section stand to what was written. */
  public static Snap of(Groove groove) {
    return of(groove.setting(), groove.strokes());
  }

  private static Snap of(Groove.Setting setting, List<Stroke> strokes) {
    Meters meters = setting.meters();
    if (!isSwungEighths(setting.feel())) {
      return new Snap(meters, Set.of());
    }
    Set<Beat> three = beats(meters, strokes, 3);
    three.retainAll(beats(meters, strokes, 2));
    return new Snap(meters, three);
  }

  /** True if the feel moves the second eighth of a beat. */
  public static boolean isSwungEighths(Feel feel) {
    return feel.unit() == Feel.Unit.EIGHTHS && !feel.isStraight();
  }

  /**
   * The strokes of a section where they are shown and sound. Strokes of one limb on one surface
   * that meet become one, the louder.
   *
   * @param strokes as written, in the order of {@link Stroke#ORDER}
   */
  public static List<Stroke> strokes(Groove.Setting setting, List<Stroke> strokes) {
    Snap snap = of(setting, strokes);
    if (snap.beats.isEmpty()) {
      return strokes;
    }
    List<Stroke> moved = new ArrayList<>(snap.each(strokes));
    moved.sort(Stroke.ORDER);
    List<Stroke> kept = new ArrayList<>(moved.size());
    for (Stroke next : moved) {
      Stroke last = kept.isEmpty() ? null : kept.get(kept.size() - 1);
      if (last == null || Stroke.ORDER.compare(last, next) != 0) {
        kept.add(next);
      } else if (last.level().compareTo(next.level()) < 0) {
        kept.set(kept.size() - 1, next);
      }
    }
    return kept;
  }

  /**
   * The same strokes in the same order, each where it sounds beside the others: what tells which of
   * them a limb can strike.
   *
   * @param strokes as written
   */
  public static List<Stroke> each(Groove.Setting setting, List<Stroke> strokes) {
    Snap snap = of(setting, strokes);
    return snap.beats.isEmpty() ? strokes : snap.each(strokes);
  }

  private List<Stroke> each(List<Stroke> strokes) {
    Set<List<Object>> places = new HashSet<>();
    for (Stroke stroke : strokes) {
      if (isSnapped(stroke)) {
        places.add(List.of(stroke.bar(), stroke.at()));
      }
    }
    return Lists.map(strokes, stroke -> snapped(stroke, places));
  }

  /** The beats that some word divides in so many, and no word spread unevenly over it. */
  private static Set<Beat> beats(Meters meters, List<Stroke> strokes, int parts) {
    Set<Beat> found = new HashSet<>();
    List<Map<Division, Boolean>> known = new ArrayList<>();
    meters.cycle().forEach(meter -> known.add(new HashMap<>()));
    for (Stroke stroke : strokes) {
      Division division = stroke.slot().division();
      Map<Division, Boolean> ofMeter = known.get(meters.index(stroke.bar()));
      Meter meter = meters.of(stroke.bar());
      if (ofMeter.computeIfAbsent(division, d -> perBeat(d, meter) == parts)) {
        for (int i = 0; i < division.beats(); i++) {
          found.add(new Beat(stroke.bar(), division.beat() + i));
        }
      }
    }
    return found;
  }

  /** Into how many slots a word divides each of its beats; 0 unless they are plain and alike. */
  private static int perBeat(Division division, Meter meter) {
    if (division.slots() % division.beats() != 0 || !division.isInside(meter)) {
      return 0;
    }
    int end = division.beat() + division.beats();
    Time beat = meter.beat(division.beat());
    for (int i = division.beat(); i < end; i++) {
      if (!Meter.isPlain(meter.beat(i)) || !meter.beat(i).equals(beat)) {
        return 0;
      }
    }
    return division.slots() / division.beats();
  }

  private int beat(Slot slot) {
    return slot.division().beat() + slot.index() / 2;
  }

  /** True if a stroke stands in a word of two that has snapped to a triplet. */
  public boolean isSnapped(Stroke stroke) {
    return !beats.isEmpty()
        && perBeat(stroke.slot().division(), meters.of(stroke.bar())) == 2
        && beats.contains(new Beat(stroke.bar(), beat(stroke.slot())));
  }

  /** True if a place lies inside a beat that snaps. */
  public boolean isSnapped(int bar, Time at) {
    if (beats.isEmpty()) {
      return false;
    }
    Meters.Place place = meters.place(bar, at);
    return beats.contains(new Beat(place.bar(), meters.of(place.bar()).beatAt(place.at())));
  }

  private Stroke snapped(Stroke stroke, Set<List<Object>> places) {
    Time end = stroke.at().plus(stroke.length());
    Meter meter = meters.of(stroke.bar());
    Time at = isSnapped(stroke) ? warped(meter, beat(stroke.slot()), stroke.at()) : stroke.at();
    Time shownEnd = end;
    if (isInOwnBeat(stroke, end)) {
      shownEnd = warped(meter, beat(stroke.slot()), end);
    } else if (!isInOwnWord(stroke, end)) {
      shownEnd = end(stroke.bar(), end, places);
    }
    return at.equals(stroke.at()) && shownEnd.equals(end)
        ? stroke
        : stroke.moved(stroke.bar(), at, shownEnd.minus(at), stroke.slot());
  }

  /** Where a hold ends: with the stroke that ends it, or with the half of a beat that snaps. */
  private Time end(int bar, Time end, Set<List<Object>> places) {
    Meters.Place place = meters.place(bar, end);
    int in = place.bar();
    Meter meter = meters.of(in);
    Time line = meters.between(bar, in);
    Time at = place.at();
    int beat = meter.beatAt(at);
    if (!beats.contains(new Beat(in, beat))) {
      return end;
    }
    boolean half = at.minus(meter.beatStart(beat)).equals(meter.beat(beat).over(2));
    return half || places.contains(List.of(in, at)) ? line.plus(warped(meter, beat, at)) : end;
  }

  private boolean isInOwnBeat(Stroke stroke, Time end) {
    return isSnapped(stroke)
        && end.compareTo(meters.of(stroke.bar()).beatStart(beat(stroke.slot()) + 1)) <= 0;
  }

  private boolean isInOwnWord(Stroke stroke, Time end) {
    Division division = stroke.slot().division();
    Meter meter = meters.of(stroke.bar());
    return !isSnapped(stroke)
        && division.isInside(meter)
        && end.compareTo(meter.beatStart(division.beat() + division.beats())) <= 0;
  }

  private static Time warped(Meter meter, int beat, Time at) {
    Time in = at.minus(meter.beatStart(beat)).over(meter.beat(beat));
    Time moved =
        in.before(HALF)
            ? in.times(2).times(TWO_THIRDS)
            : TWO_THIRDS.plus(in.minus(HALF).times(TWO_THIRDS));
    return meter.beatStart(beat).plus(meter.beat(beat).times(moved));
  }

  private static Time unwarped(Meter meter, int beat, Time at) {
    Time in = at.minus(meter.beatStart(beat)).over(meter.beat(beat));
    Time written =
        in.before(TWO_THIRDS)
            ? in.over(TWO_THIRDS).over(2)
            : HALF.plus(in.minus(TWO_THIRDS).over(TWO_THIRDS));
    return meter.beatStart(beat).plus(meter.beat(beat).times(written));
  }

  /** Where a place of the word that a stroke stands in is shown. */
  public Time shown(Stroke stroke, Time written) {
    return isSnapped(stroke)
        ? warped(meters.of(stroke.bar()), beat(stroke.slot()), written)
        : written;
  }

  /**
   * A stroke of the finished section as it was written. The end of a hold beyond the stroke's own
   * beat stays where it is shown.
   */
  public Stroke written(Stroke stroke) {
    if (!isSnapped(stroke)) {
      return stroke;
    }
    int beat = beat(stroke.slot());
    Meter meter = meters.of(stroke.bar());
    Time at = unwarped(meter, beat, stroke.at());
    Time shownEnd = stroke.at().plus(stroke.length());
    Time end = isInOwnBeat(stroke, shownEnd) ? unwarped(meter, beat, shownEnd) : shownEnd;
    return stroke.moved(stroke.bar(), at, end.minus(at), stroke.slot());
  }

  /** All strokes of the finished section as they were written, in the same order. */
  List<Stroke> written(List<Stroke> strokes) {
    return beats.isEmpty() ? strokes : Lists.map(strokes, this::written);
  }

  /**
   * The slot that a stroke is counted and spelled in: its own, or the place of the triplet that it
   * has snapped to.
   */
  public Slot slot(Stroke stroke) {
    Slot own = stroke.slot();
    if (!isSnapped(stroke)) {
      return own;
    }
    Division triplet = new Division(beat(own), 1, 3);
    if (own.index() % 2 == 1) {
      return new Slot(triplet, 2, own.parts());
    }
    // The first two thirds: so many places of a group stand in two slots of the triplet.
    if (own.parts().isEmpty()) {
      return new Slot(triplet, 0, List.of());
    }
    Slot.Part first = own.parts().get(0);
    if (first.of() % 2 == 0) {
      int half = first.of() / 2;
      List<Slot.Part> parts = new ArrayList<>(own.parts());
      if (half == 1) {
        parts.remove(0);
      } else {
        parts.set(0, new Slot.Part(first.index() % half, half));
      }
      return new Slot(triplet, first.index() / half, parts);
    }
    int of = 1;
    int index = 0;
    for (Slot.Part part : own.parts()) {
      of *= part.of();
      index = index * part.of() + part.index();
    }
    int third = 2 * index / of;
    return new Slot(triplet, third, List.of(new Slot.Part(2 * index - third * of, of)));
  }

  /** Length of the slot of a stroke by itself, without the holds after it, as it is shown. */
  public Time slotLength(Stroke stroke) {
    Slot slot = stroke.slot();
    Meter meter = meters.of(stroke.bar());
    if (!slot.division().isInside(meter)) {
      return stroke.length();
    }
    Time length = slot.placeLength(meter);
    return isSnapped(stroke)
        ? length.times(slot.index() % 2 == 0 ? Time.of(4, 3) : TWO_THIRDS)
        : length;
  }
}
