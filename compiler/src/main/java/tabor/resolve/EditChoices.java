package tabor.resolve;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.lists.Lists;
import tabor.rhythm.Count;
import tabor.rhythm.CountNames;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.At;
import tabor.syntax.CountRef;
import tabor.syntax.Edit;
import tabor.syntax.Line;
import tabor.syntax.Num;
import tabor.syntax.TargetRef;

/**
 * The choices of an edit: its places, their groups, so many of them; where no places are named, its
 * bars.
 */
final class EditChoices {
  private final Problems problems;
  private final Line line;
  private final Supplier<SectionResolver.@Nullable Draft> above;
  private long count;

  EditChoices(Problems problems, Line line, Supplier<SectionResolver.@Nullable Draft> above) {
    this.problems = problems;
    this.line = line;
    this.above = above;
  }

  /** How many choices there are, also where they were too many to be made. */
  long count() {
    return count;
  }

  /** The choices; null, and said so, if there are none; none at all if there are too many. */
  @Nullable List<SheetChoices.Made> of(Edit edit, int most) {
    At.Places places = edit.places();
    if (places != null) {
      return ofPlaces(edit, places, most);
    }
    At.Bars bars = EditParts.bars(edit);
    if (bars == null) {
      count = 1;
      return List.of(SheetChoices.Made.of(edit, edit.span()));
    }
    List<SheetChoices.Made> made = new ArrayList<>();
    for (Num bar : numbers(bars)) {
      At.Bars one = new At.Listed(List.of(bar), bar.span());
      made.add(SheetChoices.Made.of(EditParts.withBars(edit, one), bar.span()));
    }
    count = made.size();
    return count > most ? List.of() : made;
  }

  /** The bars of a clause, one by one. */
  private List<Num> numbers(At.Bars bars) {
    if (bars instanceof At.Listed listed) {
      return listed.bars();
    }
    SectionResolver.Draft draft = above.get();
    if (draft == null) {
      return List.of(new Num(Time.of(1), bars.span()));
    }
    PlaceQuery.Bars found = new PlaceQuery(draft.draft().view(), stroke -> true).bars(bars);
    if (found.missing() != null) {
      // The line says so itself when it is carried out.
      Num none = new Num(Time.of(draft.draft().bars() + 1L), found.missing());
      return List.of(none);
    }
    return Lists.map(found.numbers(), bar -> new Num(Time.of(bar), bars.span()));
  }

  private @Nullable List<SheetChoices.Made> ofPlaces(Edit edit, At.Places places, int most) {
    List<SheetChoices.Made> made = new ArrayList<>();
    if (!places.ends().isEmpty()) {
      for (List<At.Place> group : places.groups()) {
        made.add(made(edit, group));
      }
      count = made.size();
      return count > most ? List.of() : made;
    }
    List<Found> found = new ArrayList<>();
    for (At.Place place : places.items()) {
      found.addAll(found(edit, place));
    }
    Num choose = places.choose();
    int taken = choose == null ? 1 : choose.whole();
    if (choose != null && taken > found.size()) {
      problems.lost(
          Code.SYNTAX,
          line,
          choose.span(),
          "there are not " + taken + " places here to choose, but " + found.size(),
          "choose " + found.size() + " or fewer, or name more places");
      return null;
    }
    count = binomial(found.size(), taken);
    if (count > most) {
      return List.of();
    }
    choose(edit, found, taken, 0, new ArrayList<>(), made);
    return made;
  }

  private static SheetChoices.Made made(Edit edit, List<At.Place> places) {
    Span span = places.get(0).span().to(places.get(places.size() - 1).span());
    return SheetChoices.Made.of(
        EditParts.withPlaces(edit, new At.Places(places, span), null), span);
  }

  /** All choices of so many of the places, in order. */
  private static void choose(
      Edit edit,
      List<Found> found,
      int taken,
      int from,
      List<Found> chosen,
      List<SheetChoices.Made> made) {
    if (chosen.size() == taken) {
      List<At.Place> places = Lists.map(chosen, Found::place);
      Span span = places.get(0).span().to(places.get(places.size() - 1).span());
      At.Bars bars = chosen.size() == 1 ? chosen.get(0).bars() : null;
      made.add(
          SheetChoices.Made.of(
              EditParts.withPlaces(edit, new At.Places(places, span), bars), span));
      return;
    }
    // As many places have to be left as are still to be taken, or this way leads nowhere.
    for (int i = from; i <= found.size() - (taken - chosen.size()); i++) {
      chosen.add(found.get(i));
      choose(edit, found, taken, i + 1, chosen, made);
      chosen.remove(chosen.size() - 1);
    }
  }

  /** How many ways there are to choose {@code taken} of {@code all}; large values are cut. */
  static long binomial(int all, int taken) {
    long ways = 1;
    int few = Math.min(taken, all - taken);
    for (int i = 1; i <= few; i++) {
      ways = ways * (all - few + i) / i;
      if (ways > Integer.MAX_VALUE) {
        return ways;
      }
    }
    return ways;
  }

  /**
   * A place to choose.
   *
   * @param place as one count
   * @param bars the bars in which it was found, where bars are named and others lack it; else null
   */
  private record Found(At.Place place, At.@Nullable Bars bars) {}

  /** A place as written, or the counts that {@code every} or a range finds. */
  private List<Found> found(Edit edit, At.Place place) {
    SectionResolver.Draft draft = place instanceof At.One ? null : above.get();
    if (draft == null) {
      return List.of(new Found(place, null));
    }
    Sight sight = sight(edit, draft);
    At.Bars clause = EditParts.bars(edit);
    PlaceQuery.Bars bars = new PlaceQuery(sight.view(), sight.target()).bars(clause);
    Map<Count, List<Integer>> where = new LinkedHashMap<>();
    Map<Count, Time> when = new LinkedHashMap<>();
    PlaceReader reader = new PlaceReader(sight.view(), sight.target(), sight.adds());
    for (int bar : bars.numbers()) {
      PlaceReading reading = reader.read(place, bar);
      if (reading.isUnclear()) {
        // The line says so itself when it is carried out.
        return List.of(new Found(place, null));
      }
      Meter meter = sight.view().meters().of(bar);
      counts(sight, reading, reader, place, bar)
          .forEach(
              (count, at) -> {
                where.computeIfAbsent(count, c -> new ArrayList<>()).add(bar);
                when.putIfAbsent(count, at.over(meter.bar()));
              });
    }
    if (where.isEmpty()) {
      return List.of(new Found(place, null));
    }
    List<Found> found = new ArrayList<>();
    where.entrySet().stream()
        .sorted(Comparator.comparing(entry -> when.get(entry.getKey())))
        .forEach(
            entry -> {
              boolean all = clause == null || entry.getValue().size() == bars.numbers().size();
              At.Bars narrowed =
                  all
                      ? null
                      : new At.Listed(
                          Lists.map(entry.getValue(), bar -> new Num(Time.of(bar), clause.span())),
                          clause.span());
              found.add(
                  new Found(new At.One(new CountRef(entry.getKey(), place.span())), narrowed));
            });
    return found;
  }

  /** The counts of what a place means in a bar, with where they are. */
  private static Map<Count, Time> counts(
      Sight sight, PlaceReading reading, PlaceReader reader, At.Place place, int bar) {
    Meter meter = sight.view().meters().of(bar);
    Map<Count, Time> counts = new LinkedHashMap<>();
    if (sight.adds()) {
      for (CountReading one : reading.readings()) {
        counts.put(exact(one, place instanceof At.EveryValue, reader, bar, meter), one.place());
      }
      return counts;
    }
    for (Stroke stroke : sight.view().inBar(bar)) {
      if (sight.target().test(stroke) && reading.chosen().test(stroke)) {
        counts.putIfAbsent(CountNames.of(stroke.slot(), meter), stroke.at());
      }
    }
    return counts;
  }

  /** A count that is read as this very place. */
  private static Count exact(
      CountReading reading, boolean named, PlaceReader reader, int bar, Meter meter) {
    Count plain = CountNames.of(reading.slot(), meter);
    if (!named) {
      PlaceReading again = reader.read(new CountRef(plain, new Span(0, 0)), bar);
      if (again.readings().size() == 1 && again.readings().get(0).place().equals(reading.place())) {
        return plain;
      }
    }
    int slots = reading.slot().division().slots();
    if (reading.slot().division().beats() == 1 && plain.division() == 0 && slots > 1) {
      return new Count(plain.beat(), plain.syllable(), plain.places(), slots);
    }
    Count other = CountNames.of(reading.place(), meter);
    return other.division() == 0 && other.syllable() != Count.Syllable.NONE
        ? new Count(other.beat(), other.syllable(), other.places(), slotsOf(other, meter))
        : other;
  }

  /** The division in which a plain count is read. */
  private static int slotsOf(Count plain, Meter meter) {
    boolean dotted = Meter.isDotted(meter.beat(plain.beat() - 1));
    return dotted ? 3 : plain.syllable() == Count.Syllable.AND ? 2 : 4;
  }

  // ---- who is meant

  /**
   * What an edit sees.
   *
   * @param view the section in which its places are read
   * @param target whose strokes are meant
   * @param adds true if it makes strokes at its places
   */
  private record Sight(SectionView view, Predicate<Stroke> target, boolean adds) {}

  private Sight sight(Edit edit, SectionResolver.Draft draft) {
    if (edit instanceof Edit.Take take) {
      Resolved source = draft.frame().scope().section(take.section().text());
      if (source != null && source.section() instanceof Groove groove) {
        return new Sight(
            SectionView.of(groove).counted(draft.draft().view().words()),
            TargetFilter.any(take.targets(), groove.setting().kit()),
            false);
      }
    }
    List<TargetRef> targets = EditParts.targets(edit);
    boolean limb = Lists.any(targets, TargetRef.OfLimb.class::isInstance);
    SectionDraft seen = limb ? Dealing.dealt(draft.frame(), draft.draft()) : draft.draft();
    return new Sight(
        seen.view(), TargetFilter.any(targets, draft.frame().kit()), edit instanceof Edit.Add);
  }
}
