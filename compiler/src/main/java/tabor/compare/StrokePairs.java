package tabor.compare;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.BiPredicate;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.rhythm.Time;

/** Finds which stroke was which, bar by bar and place by place. */
final class StrokePairs {
  private final List<StrokeChange> changes = new ArrayList<>();

  private StrokePairs() {}

  /** What is struck otherwise. */
  static List<StrokeChange> of(
      @Nullable Groove before, @Nullable Groove after, List<SectionChange.Bars> bars) {
    StrokePairs pairs = new StrokePairs();
    Map<Integer, List<Stroke>> left = byBar(before);
    Map<Integer, List<Stroke>> right = byBar(after);
    pairs.bar(left.getOrDefault(0, List.of()), right.getOrDefault(0, List.of()));
    for (SectionChange.Bars bar : bars) {
      pairs.bar(
          bar.before() == 0 ? List.of() : left.getOrDefault(bar.before(), List.of()),
          bar.after() == 0 ? List.of() : right.getOrDefault(bar.after(), List.of()));
    }
    return pairs.changes;
  }

  private static Map<Integer, List<Stroke>> byBar(@Nullable Groove groove) {
    Map<Integer, List<Stroke>> bars = new HashMap<>();
    if (groove != null) {
      groove.written().forEach(s -> bars.computeIfAbsent(s.bar(), bar -> new ArrayList<>()).add(s));
    }
    return bars;
  }

  private static final class Place {
    final List<Stroke> before = new ArrayList<>(3);
    final List<Stroke> after = new ArrayList<>(3);
  }

  private void bar(List<Stroke> before, List<Stroke> after) {
    Map<Time, Place> places = new TreeMap<>();
    before.forEach(s -> places.computeIfAbsent(s.at(), at -> new Place()).before.add(s));
    after.forEach(s -> places.computeIfAbsent(s.at(), at -> new Place()).after.add(s));
    List<StrokeChange> found = new ArrayList<>();
    for (Place place : places.values()) {
      take(place, StrokeChange::alike, null);
      take(place, (a, b) -> a.limb() == b.limb() && sameSurface(a, b), found);
      // What is struck comes first: a hand that gives its drum to the other has moved nothing.
      take(place, StrokePairs::sameSurface, found);
      take(place, (a, b) -> a.limb() == b.limb(), found);
    }
    List<Stroke> gone = new ArrayList<>();
    List<Stroke> came = new ArrayList<>();
    places.values().forEach(place -> gone.addAll(place.before));
    places.values().forEach(place -> came.addAll(place.after));
    movedInTime(gone, came, found);
    gone.forEach(stroke -> found.add(new StrokeChange(stroke, null)));
    came.forEach(stroke -> found.add(new StrokeChange(null, stroke)));
    changes.addAll(found);
  }

  private static void take(
      Place place, BiPredicate<Stroke, Stroke> fits, @Nullable List<StrokeChange> into) {
    for (Stroke now : List.copyOf(place.after)) {
      for (Stroke old : place.before) {
        if (fits.test(old, now)) {
          place.before.remove(old);
          place.after.remove(now);
          if (into != null) {
            into.add(new StrokeChange(old, now));
          }
          break;
        }
      }
    }
  }

  private static boolean sameSurface(Stroke a, Stroke b) {
    return a.surface().name().equals(b.surface().name());
  }

  /** The only one of its kind that left a place and the only one that came to another are one. */
  private static void movedInTime(List<Stroke> gone, List<Stroke> came, List<StrokeChange> found) {
    for (Stroke now : List.copyOf(came)) {
      List<Stroke> from = gone.stream().filter(old -> sameKind(old, now)).toList();
      long to = came.stream().filter(other -> sameKind(now, other)).count();
      if (from.size() == 1 && to == 1) {
        gone.remove(from.get(0));
        came.remove(now);
        found.add(new StrokeChange(from.get(0), now));
      }
    }
  }

  private static boolean sameKind(Stroke a, Stroke b) {
    return a.limb() == b.limb()
        && sameSurface(a, b)
        && a.level() == b.level()
        && a.ornaments().equals(b.ornaments());
  }
}
