package tabor.groove;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.function.Predicate;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.lists.Lists;
import tabor.rhythm.Time;

/**
 * A step laid over its base, place by place. Where the step is longer the base is repeated, as
 * {@code bars} does; where it is shorter the base is cut.
 *
 * @param base the section that the step came from
 * @param step the step
 * @param before the base's strokes as written, as the step's kit and player would strike them
 * @param now the step's strokes as written: what snaps to a triplet is no change of a step
 * @param added strokes that have no counterpart
 * @param dropped strokes of the base that have none
 * @param altered same limb, same surface, other level or ornaments
 * @param moved same limb, other surface
 * @param passed same surface, other limb
 */
record Comparison(
    Groove base,
    Groove step,
    List<Stroke> before,
    List<Stroke> now,
    List<Stroke> added,
    List<Stroke> dropped,
    List<Pair> altered,
    List<Pair> moved,
    List<Pair> passed) {

  /** A stroke as it was and as it is. */
  record Pair(Stroke before, Stroke after) {}

  /** Compares strokes; the rest of the two sections is compared in words only. */
  static Comparison of(Groove base, Groove step) {
    List<Stroke> before = laidOut(base, step);
    Comparison found =
        new Comparison(
            base,
            step,
            before,
            Snap.of(step).written(step.strokes()),
            new ArrayList<>(),
            new ArrayList<>(),
            new ArrayList<>(),
            new ArrayList<>(),
            new ArrayList<>());
    Map<Map.Entry<Integer, Time>, List<Stroke>> old = byPlace(before);
    Map<Map.Entry<Integer, Time>, List<Stroke>> now = byPlace(found.now);
    now.forEach((place, strokes) -> found.match(old.getOrDefault(place, List.of()), strokes));
    old.forEach(
        (place, strokes) -> {
          if (!now.containsKey(place)) {
            found.dropped.addAll(strokes);
          }
        });
    found.dropped.sort(Stroke.ORDER);
    return found;
  }

  /** Strokes of the step that are new or sound otherwise: a change of hands alone is no change. */
  Set<Stroke> changed() {
    Set<Stroke> changed = new HashSet<>(added);
    altered.forEach(pair -> changed.add(pair.after()));
    moved.forEach(pair -> changed.add(pair.after()));
    altered(passed).forEach(pair -> changed.add(pair.after()));
    return changed;
  }

  /** The same strokes as the finished step has them. */
  Set<Stroke> shown() {
    Set<Stroke> changed = changed();
    Set<Stroke> shown = new HashSet<>();
    for (int i = 0; i < now.size(); i++) {
      if (changed.contains(now.get(i))) {
        shown.add(step.strokes().get(i));
      }
    }
    return shown;
  }

  /** The same with only some strokes taken into account; a pair is judged by what it is now. */
  Comparison where(Predicate<Stroke> which) {
    return new Comparison(
        base,
        step,
        Lists.filter(before, which),
        Lists.filter(now, which),
        Lists.filter(added, which),
        Lists.filter(dropped, which),
        pairs(altered, which),
        pairs(moved, which),
        pairs(passed, which));
  }

  private static List<Pair> pairs(List<Pair> pairs, Predicate<Stroke> which) {
    return Lists.filter(pairs, pair -> which.test(pair.after()));
  }

  /** The same with the hands or feet that changed places no longer told; levels still are. */
  Comparison withoutSticking(Predicate<Stroke> which) {
    List<Pair> all = new ArrayList<>(altered);
    all.addAll(pairs(passed, which));
    return new Comparison(
        base, step, before, now, added, dropped, all, moved, pairs(passed, which.negate()));
  }

  /** Strokes that came, went, or are struck elsewhere or by another limb. */
  List<Stroke> touched() {
    List<Stroke> touched = new ArrayList<>(added);
    touched.addAll(dropped);
    moved.forEach(pair -> touched.add(pair.after()));
    passed.forEach(pair -> touched.add(pair.after()));
    return touched;
  }

  private void match(List<Stroke> old, List<Stroke> now) {
    List<Stroke> left = new ArrayList<>(old);
    List<Stroke> open = new ArrayList<>(now);
    altered.addAll(altered(pair(left, open, (a, b) -> a.limb() == b.limb() && sameSurface(a, b))));
    // What is struck comes first: a hand that gives its drum to the other has moved nothing.
    passed.addAll(pair(left, open, Comparison::sameSurface));
    moved.addAll(pair(left, open, (a, b) -> a.limb() == b.limb()));
    added.addAll(open);
    dropped.addAll(left);
  }

  private static List<Pair> pair(
      List<Stroke> left, List<Stroke> open, BiPredicate<Stroke, Stroke> fits) {
    List<Pair> pairs = new ArrayList<>();
    for (Stroke stroke : List.copyOf(open)) {
      for (Stroke old : left) {
        if (fits.test(old, stroke)) {
          pairs.add(new Pair(old, stroke));
          left.remove(old);
          open.remove(stroke);
          break;
        }
      }
    }
    return pairs;
  }

  private static boolean sameSurface(Stroke a, Stroke b) {
    return a.surface().name().equals(b.surface().name());
  }

  /** Those of some pairs that sound otherwise now. */
  private static List<Pair> altered(List<Pair> pairs) {
    return Lists.filter(pairs, pair -> !isSame(pair));
  }

  private static boolean isSame(Pair pair) {
    Stroke a = pair.before();
    Stroke b = pair.after();
    return a.level() == b.level()
        && a.ornaments().equals(b.ornaments())
        && (!b.ornaments().isRolled() || a.length().equals(b.length()));
  }

  /** By bar and place in it. */
  private static Map<Map.Entry<Integer, Time>, List<Stroke>> byPlace(List<Stroke> strokes) {
    Map<Map.Entry<Integer, Time>, List<Stroke>> map = new LinkedHashMap<>();
    for (Stroke stroke : strokes) {
      map.computeIfAbsent(Map.entry(stroke.bar(), stroke.at()), place -> new ArrayList<>(3))
          .add(stroke);
    }
    return map;
  }

  /** The base's strokes in the bars, on the kit and with the player of the step. */
  private static List<Stroke> laidOut(Groove base, Groove step) {
    List<Stroke> strokes = played(base, step);
    if (base.bars() == step.bars()) {
      return strokes;
    }
    Map<Integer, List<Stroke>> byBar = new HashMap<>();
    for (Stroke stroke : strokes) {
      byBar.computeIfAbsent(stroke.bar(), bar -> new ArrayList<>()).add(stroke);
    }
    List<Stroke> all = new ArrayList<>(byBar.getOrDefault(0, List.of()));
    for (int bar = 1; bar <= step.bars(); bar++) {
      for (Stroke stroke : byBar.getOrDefault((bar - 1) % base.bars() + 1, List.of())) {
        all.add(stroke.moved(bar, stroke.at(), stroke.length(), stroke.slot()));
      }
    }
    return all;
  }

  private static List<Stroke> played(Groove base, Groove step) {
    if (base.setting().kit().equals(step.setting().kit())) {
      return Snap.of(base).written(base.strokes());
    }
    boolean mirror = step.setting().kit().leftHanded();
    Map<List<Object>, Stroke> played = new LinkedHashMap<>();
    for (Stroke stroke : base.written()) {
      Surface struck =
          Optional.ofNullable(step.setting().kit().struck(stroke.surface()))
              .orElse(stroke.surface());
      Limb limb = mirror ? stroke.limb().other() : stroke.limb();
      Stroke here = stroke.on(struck).by(limb, stroke.dealt());
      played.putIfAbsent(List.of(here.bar(), here.at(), limb, struck.name()), here);
    }
    List<Stroke> sorted = new ArrayList<>(played.values());
    sorted.sort(Stroke.ORDER);
    return sorted;
  }
}
