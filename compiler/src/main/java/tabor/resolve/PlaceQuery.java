package tabor.resolve;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.groove.Level;
import tabor.groove.Stroke;
import tabor.rhythm.Count;
import tabor.rhythm.CountNames;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.At;
import tabor.syntax.CountRef;
import tabor.syntax.Num;
import tabor.syntax.Ref;

/**
 * Asks a section which strokes are at which places: targets by places by bars by levels. Edits,
 * fixes and hover ask the same.
 */
public final class PlaceQuery {
  private final SectionView view;
  private final Predicate<Stroke> target;
  private final PlaceReader reader;

  /** Asks for strokes of a target in a section. */
  public PlaceQuery(SectionView view, Predicate<Stroke> target) {
    this.view = view;
    this.target = target;
    this.reader = new PlaceReader(view, target, false);
  }

  /**
   * What was found.
   *
   * @param strokes the strokes, in order of time; none where something is missing
   * @param misses what is not there
   */
  public record Found(List<Stroke> strokes, List<Miss> misses) {
    /** Copies the lists. */
    public Found {
      strokes = List.copyOf(strokes);
      misses = List.copyOf(misses);
    }

    private static Found missing(List<Miss> misses) {
      return new Found(List.of(), misses);
    }
  }

  /** The bars of a clause, or the span that names one which is not there. */
  record Bars(Collection<Integer> numbers, @Nullable Span missing) {}

  /**
   * The target's strokes that the clauses choose.
   *
   * @param what where the target is written, for misses of the whole target
   */
  public Found find(At at, Span what) {
    return find(at, what, false);
  }

  /**
   * The same, and where some of it is missing, what is there.
   *
   * @param partly true to find what is there beside what is missing
   */
  Found find(At at, Span what, boolean partly) {
    Bars bars = bars(at.bars());
    if (bars.missing() != null) {
      return Found.missing(List.of(new Miss.NoBar(bars.missing())));
    }
    At.Places places = at.places();
    List<Miss> partial = new ArrayList<>();
    Collection<Stroke> there;
    if (places == null) {
      there = all(bars.numbers());
    } else {
      Set<Stroke> chosen = Collections.newSetFromMap(new IdentityHashMap<>());
      List<Miss> misses = new ArrayList<>();
      for (At.Place place : places.items()) {
        Miss miss = choose(place, bars.numbers(), at.bars() != null, chosen);
        if (miss != null) {
          misses.add(miss);
        }
      }
      if (!misses.isEmpty() && (!partly || chosen.isEmpty())) {
        return Found.missing(misses);
      }
      partial.addAll(misses);
      there = chosen;
    }
    Ref<Level> where = at.where();
    List<Stroke> strokes = new ArrayList<>(there.size());
    Set<Stroke> unordered = there instanceof Set<Stroke> set ? set : null;
    for (Stroke stroke : unordered == null ? there : view.strokes()) {
      if ((unordered == null || unordered.contains(stroke))
          && (where == null || stroke.level() == where.value())) {
        strokes.add(stroke);
      }
    }
    if (strokes.isEmpty()) {
      Span span = where == null ? what : where.span();
      int bar = bars.numbers().iterator().next();
      return Found.missing(
          List.of(new Miss.Nothing(span, null, bar, where == null ? null : where.value())));
    }
    return new Found(strokes, partial);
  }

  private List<Stroke> all(Collection<Integer> bars) {
    List<Stroke> all = new ArrayList<>();
    for (int bar : bars) {
      for (Stroke stroke : view.inBar(bar)) {
        if (target.test(stroke)) {
          all.add(stroke);
        }
      }
    }
    return all;
  }

  /** Puts the strokes of one place into {@code chosen}; says what is not there. */
  private @Nullable Miss choose(
      At.Place place, Collection<Integer> bars, boolean eachBar, Set<Stroke> chosen) {
    boolean found = false;
    Miss outside = null;
    Miss nothing = null;
    for (int bar : bars) {
      PlaceReading reading = reader.read(place, bar);
      if (reading.isUnclear()) {
        return reading.miss();
      }
      boolean here = false;
      for (Stroke stroke : view.inBar(bar)) {
        if (target.test(stroke) && reading.chosen().test(stroke)) {
          chosen.add(stroke);
          here = true;
        }
      }
      found |= here;
      if (!here && reading.miss() != null) {
        outside = outside == null ? reading.miss() : outside;
      } else if (!here && nothing == null) {
        nothing = new Miss.Nothing(place.span(), count(place, bar), bar, null);
      }
    }
    boolean perBar = eachBar && (place instanceof At.One || place instanceof At.Range);
    if (perBar ? nothing == null && outside == null : found) {
      return null;
    }
    return nothing == null ? outside : nothing;
  }

  private @Nullable Count count(At.Place place, int bar) {
    return place instanceof At.One one ? reader.meant(one.count(), bar) : null;
  }

  /** The bars that a clause means, in order; all of them without one. */
  Bars bars(At.@Nullable Bars clause) {
    Set<Integer> found = new TreeSet<>();
    if (clause == null) {
      add(found, view.firstBar(), view.bars(), 1);
      return new Bars(found, null);
    }
    Span missing =
        clause.match(
            new At.BarsCases<@Nullable Span>() {
              @Override
              public @Nullable Span listed(At.Listed bars) {
                for (Num num : bars.bars()) {
                  if (!has(num)) {
                    return num.span();
                  }
                  found.add(num.whole());
                }
                return null;
              }

              @Override
              public @Nullable Span through(At.Through bars) {
                if (!has(bars.from()) || !has(bars.to())) {
                  return has(bars.from()) ? bars.to().span() : bars.from().span();
                }
                add(found, bars.from().whole(), bars.to().whole(), 1);
                return null;
              }

              @Override
              public @Nullable Span last(At.Last bars) {
                found.add(view.bars());
                return null;
              }

              @Override
              public @Nullable Span everyNth(At.EveryNth bars) {
                int n = bars.n().whole();
                add(found, n, view.bars(), n);
                return null;
              }
            });
    return new Bars(found, missing == null && found.isEmpty() ? clause.span() : missing);
  }

  private static void add(Set<Integer> bars, int from, int to, int step) {
    for (long bar = from; bar <= to; bar += step) {
      bars.add((int) bar);
    }
  }

  /** True if the section has this bar. */
  boolean has(Num num) {
    int bar = num.whole();
    return num.value().isWhole() && bar >= view.firstBar() && bar <= view.bars();
  }

  /** What a count means in a bar. */
  PlaceReading read(CountRef count, int bar) {
    return reader.read(count, bar);
  }

  /**
   * The counts in a bar at which the target is struck, nearest to a place first; without a place in
   * order of time. Each can be written after {@code at}.
   */
  public List<Count> near(int bar, @Nullable Time place) {
    Map<Count, Time> counts = new LinkedHashMap<>();
    for (Stroke stroke : view.inBar(bar)) {
      if (target.test(stroke)) {
        counts.putIfAbsent(CountNames.of(stroke.slot(), view.meters().of(bar)), stroke.at());
      }
    }
    List<Count> near = new ArrayList<>(counts.keySet());
    if (place != null) {
      near.sort((a, b) -> distance(counts.get(a), place).compareTo(distance(counts.get(b), place)));
    }
    return near;
  }

  private static Time distance(@Nullable Time at, Time place) {
    Time difference = at == null ? Time.ZERO : at.minus(place);
    return difference.sign() < 0 ? difference.negate() : difference;
  }

  /** The bars in which the target is struck, in order. */
  public List<Integer> barsPlayed() {
    List<Integer> bars = new ArrayList<>();
    for (Stroke stroke : view.strokes()) {
      if (target.test(stroke) && (bars.isEmpty() || bars.get(bars.size() - 1) != stroke.bar())) {
        bars.add(stroke.bar());
      }
    }
    return bars;
  }

  /** The place that a count would have in a bar with nothing in it; null if the bar lacks it. */
  public @Nullable Time plainPlace(Count count, int bar) {
    SectionView empty = view.with(List.of());
    List<CountReading> readings = new CountReader(empty, bar, stroke -> false).read(count);
    return readings.isEmpty() ? null : readings.get(0).place();
  }
}
