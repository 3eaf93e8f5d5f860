package tabor.resolve;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.IntFunction;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.groove.Stroke;
import tabor.lists.Lists;
import tabor.rhythm.Count;
import tabor.rhythm.Division;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.At;
import tabor.syntax.CountRef;

/**
 * The one reading of places: what a place means in a bar of a section, for strokes to be chosen and
 * for strokes to be added there.
 *
 * @param target whose strokes are spoken of: counts are read by theirs first
 * @param adds true if strokes are added: then every reading counts, else only those that meet a
 *     stroke of the target
 */
record PlaceReader(SectionView view, Predicate<Stroke> target, boolean adds) {
  /** What a place means in a bar. */
  PlaceReading read(At.Place place, int bar) {
    return place.match(new InBar(bar));
  }

  /** What a count means in a bar. */
  PlaceReading read(CountRef count, int bar) {
    return new InBar(bar).count(count, false);
  }

  /** A count with our own syllables, as it is told; null where the word is nobody's. */
  @Nullable Count meant(CountRef count, int bar) {
    List<Count> meant = SaidCounts.of(count, view.words(), view.grid(bar).meter());
    return meant.isEmpty() ? null : meant.get(0);
  }

  /** What the lesson's own meaning of a count would have been; null where nothing speaks for it. */
  @Nullable CountReading passedOver(CountRef count, CountReading ours, int bar) {
    return new InBar(bar).passedOver(count, ours);
  }

  /** Reads the places of one bar. */
  private final class InBar implements At.PlaceCases<PlaceReading> {
    private final int bar;
    private final CountReader reader;
    private final BarGrid grid;

    InBar(int bar) {
      this.bar = bar;
      this.reader = new CountReader(view, bar, target);
      this.grid = view.grid(bar);
    }

    @Override
    public PlaceReading one(At.One place) {
      return count(place.count(), false);
    }

    /** The one reading of a count; readings that meet nothing count less. */
    PlaceReading count(CountRef count, boolean last) {
      List<Count> meant = SaidCounts.of(count, view.words(), grid.meter());
      if (meant.isEmpty()) {
        return PlaceReading.missing(new Miss.Unsaid(count, bar));
      }
      List<CountReading> readings = readings(meant);
      if (!adds && !Lists.any(readings, this::meetsTarget)) {
        // Where our own reading meets nothing, the lesson's meaning of the same word is the only
        // one.
        List<CountReading> theirs =
            Lists.filter(
                readings(SaidCounts.theirs(count, view.words(), grid.meter())), this::meetsTarget);
        readings = theirs.isEmpty() ? readings : theirs;
      }
      if (readings.size() > 1 && !adds) {
        List<CountReading> meeting = Lists.filter(readings, this::meetsTarget);
        readings =
            meeting.isEmpty() ? List.of(readings.get(last ? readings.size() - 1 : 0)) : meeting;
      }
      if (readings.isEmpty()) {
        return PlaceReading.missing(new Miss.Outside(count.span(), meant.get(0), bar));
      }
      if (readings.size() > 1) {
        return PlaceReading.missing(new Miss.Ambiguous(count, bar, readings, true));
      }
      CountReading reading = readings.get(0);
      return PlaceReading.of(readings, stroke -> reader.meets(stroke, reading));
    }

    /**
     * What a count of the lesson's own would have meant where ours won; null where that is the same
     * place, or where nothing speaks for it.
     */
    @Nullable CountReading passedOver(CountRef count, CountReading ours) {
      for (CountReading theirs : readings(SaidCounts.theirs(count, view.words(), grid.meter()))) {
        if (!theirs.place().equals(ours.place())
            && (adds ? isOpen(ours, theirs) : meetsTarget(theirs))) {
          return theirs;
        }
      }
      return null;
    }

    /** True if the strokes around do not settle that a beat is divided as ours is. */
    private boolean isOpen(CountReading ours, CountReading theirs) {
      boolean settled = false;
      for (Stroke stroke : view.inBar(bar)) {
        Division division = stroke.slot().division();
        if (division.beats() == 1 && division.beat() == ours.slot().division().beat()) {
          if (division.slots() == theirs.slot().division().slots()) {
            return true;
          }
          settled |= division.slots() == ours.slot().division().slots();
        }
      }
      return !settled;
    }

    /** The places that one of some counts may mean, in order of time. */
    private List<CountReading> readings(List<Count> meant) {
      if (meant.size() == 1) {
        return reader.read(meant.get(0));
      }
      Map<Time, CountReading> places = new TreeMap<>();
      for (Count one : meant) {
        reader.read(one).forEach(reading -> places.putIfAbsent(reading.place(), reading));
      }
      return List.copyOf(places.values());
    }

    private boolean meetsTarget(CountReading reading) {
      return Lists.any(
          view.inBar(bar), stroke -> target.test(stroke) && reader.meets(stroke, reading));
    }

    @Override
    public PlaceReading range(At.Range place) {
      PlaceReading from = count(place.from(), false);
      PlaceReading to = count(place.to(), true);
      for (PlaceReading end : List.of(from, to)) {
        if (end.miss() instanceof Miss.Outside outside) {
          return PlaceReading.missing(new Miss.Outside(place.span(), outside.count(), bar));
        }
        if (end.miss() != null) {
          return end;
        }
      }
      Time first = from.readings().get(0).place();
      CountReading last = to.readings().get(0);
      return PlaceReading.of(
          List.of(from.readings().get(0), last),
          stroke ->
              stroke.at().compareTo(first) >= 0
                  && (stroke.at().compareTo(last.place()) <= 0 || reader.meets(stroke, last)));
    }

    @Override
    public PlaceReading every(At.EverySyllable place) {
      return adds || isTheirsAlone(place.syllable())
          ? eachBeat(
              place.span(), beat -> new CountRef(Count.of(beat, place.syllable()), place.span()))
          : PlaceReading.of(List.of(), stroke -> reader.hasSyllable(stroke, place.syllable()));
    }

    /** True for a word of the lesson that is a syllable of ours at which no stroke is. */
    private boolean isTheirsAlone(Count.Syllable syllable) {
      return syllable != Count.Syllable.NONE
          && Lists.any(view.words().meanings(syllable.sign()), one -> one.division() > 0)
          && !Lists.any(
              view.inBar(bar),
              stroke -> target.test(stroke) && reader.hasSyllable(stroke, syllable));
    }

    @Override
    public PlaceReading everySaid(At.EverySaid place) {
      return view.words().meanings(place.word()).isEmpty()
          ? PlaceReading.missing(new Miss.UnsaidEvery(place))
          : eachBeat(
              place.span(),
              beat ->
                  new CountRef(Count.of(beat, Count.Syllable.NONE), place.word(), place.span()));
    }

    @Override
    public PlaceReading everySlot(At.EverySlot place) {
      int slot = place.slot().whole();
      return adds
          ? eachBeat(
              place.span(),
              beat ->
                  new CountRef(
                      new Count(beat, Count.Syllable.NONE, List.of(slot), 0), place.span()))
          : PlaceReading.of(List.of(), stroke -> stroke.slot().index() == slot - 1);
    }

    /** The places that a count has in each beat; beats without it are passed over. */
    private PlaceReading eachBeat(Span span, IntFunction<CountRef> in) {
      List<CountReading> found = new ArrayList<>();
      for (int beat = view.firstBeat(bar) + 1; beat <= grid.beats(); beat++) {
        PlaceReading one = count(in.apply(beat), false);
        if (one.miss() instanceof Miss.Ambiguous unclear) {
          return PlaceReading.missing(
              new Miss.Ambiguous(unclear.count(), bar, unclear.readings(), false));
        }
        if (one.isUnclear()) {
          return one;
        }
        found.addAll(one.readings());
      }
      return found.isEmpty()
          ? PlaceReading.missing(new Miss.Outside(span, null, bar))
          : PlaceReading.of(
              found, stroke -> Lists.any(found, reading -> reader.meets(stroke, reading)));
    }

    @Override
    public PlaceReading everyValue(At.EveryValue place) {
      Time value = place.value().length();
      ValueSlots slots = new ValueSlots(grid, value);
      Time end = grid.start(grid.beats());
      Time start = grid.start(view.firstBeat(bar));
      List<CountReading> found = new ArrayList<>();
      Set<Time> places = new HashSet<>();
      for (Time at = Time.ZERO; at.plus(value).compareTo(end) <= 0; at = at.plus(value)) {
        if (!at.before(start)) {
          Slot slot = slots.at(at);
          found.add(new CountReading(at, grid.placeLength(slot), slot, false));
          places.add(at);
        }
      }
      return found.isEmpty()
          ? PlaceReading.missing(new Miss.Outside(place.span(), null, bar))
          : PlaceReading.of(
              found,
              stroke -> places.contains(stroke.at()) || places.contains(reader.slotStart(stroke)));
    }
  }
}
