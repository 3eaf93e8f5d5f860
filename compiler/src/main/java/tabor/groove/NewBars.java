package tabor.groove;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import tabor.rhythm.CountNames;
import tabor.rhythm.Time;

/**
 * Finds bars that are another music altogether, such as a fill: to list what happened to each part
 * there would help nobody, so they are only named, with the count from which they are new.
 */
final class NewBars {
  /** So few changed strokes can be told one by one. */
  private static final int FEW = 5;

  private NewBars() {}

  /**
   * The bars in which at least half of what was or is there came, went or moved; never all bars.
   */
  static Set<Integer> find(Comparison found) {
    Map<Integer, Integer> changed = new TreeMap<>();
    found.added().forEach(stroke -> changed.merge(stroke.bar(), 1, Integer::sum));
    found.dropped().forEach(stroke -> changed.merge(stroke.bar(), 1, Integer::sum));
    found.moved().forEach(pair -> changed.merge(pair.after().bar(), 1, Integer::sum));
    Map<Integer, Integer> now = new TreeMap<>();
    found.now().forEach(stroke -> now.merge(stroke.bar(), 1, Integer::sum));
    Set<Integer> bars = new TreeSet<>();
    changed.forEach(
        (bar, count) -> {
          if (count >= FEW && count * 2 >= now.getOrDefault(bar, 0)) {
            bars.add(bar);
          }
        });
    return bars.size() >= found.step().bars() ? Set.of() : bars;
  }

  /** {@code bars 4 and 8: new from 3 on}. */
  static List<String> words(Comparison found, Set<Integer> bars) {
    Map<String, List<Integer>> byStart = new LinkedHashMap<>();
    for (int bar : bars) {
      byStart.computeIfAbsent(start(found, bar), s -> new ArrayList<>()).add(bar);
    }
    List<String> words = new ArrayList<>();
    byStart.forEach((start, same) -> words.add(PlaceWords.barNames(same) + ": new" + start));
    return words;
  }

  private static String start(Comparison found, int bar) {
    Groove step = found.step();
    Time first = step.meter(bar).bar();
    List<Stroke> all = new ArrayList<>(found.added());
    all.addAll(found.dropped());
    found.moved().forEach(pair -> all.add(pair.after()));
    for (Stroke stroke : all) {
      first = stroke.bar() == bar ? Time.min(first, stroke.at()) : first;
    }
    return first.sign() == 0 ? "" : " from " + CountNames.of(first, step.meter(bar)) + " on";
  }
}
