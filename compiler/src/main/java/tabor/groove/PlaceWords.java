package tabor.groove;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import tabor.rhythm.Count.Syllable;
import tabor.rhythm.CountNames;
import tabor.rhythm.Meter;

/**
 * Says where strokes stand: {@code on 1 and 3}, {@code on every &}, {@code on 4 in bars 2 to 4}.
 */
final class PlaceWords {
  private static final int MOST_COUNTS = 6;
  private static final int MOST_GROUPS = 3;

  private PlaceWords() {}

  /** The places of strokes of a section; empty where saying them all would be no help. */
  static Optional<String> of(Groove section, Collection<Stroke> strokes) {
    Map<Integer, List<String>> byBar = new TreeMap<>();
    Map<String, TreeSet<Integer>> byCount = new LinkedHashMap<>();
    List<Stroke> sorted = new ArrayList<>(strokes);
    sorted.sort((a, b) -> a.at().compareTo(b.at()));
    for (Stroke stroke : sorted) {
      String count = CountNames.of(stroke.slot(), section.meter(stroke.bar())).toString();
      List<String> counts = byBar.computeIfAbsent(stroke.bar(), bar -> new ArrayList<>());
      if (!counts.contains(count)) {
        counts.add(count);
      }
      byCount.computeIfAbsent(count, c -> new TreeSet<>()).add(stroke.bar());
    }
    Map<List<Integer>, List<String>> sameBars = new LinkedHashMap<>();
    byCount.forEach(
        (count, bars) ->
            sameBars.computeIfAbsent(List.copyOf(bars), b -> new ArrayList<>()).add(count));
    Map<List<String>, List<Integer>> sameCounts = new LinkedHashMap<>();
    byBar.forEach(
        (bar, counts) -> sameCounts.computeIfAbsent(counts, c -> new ArrayList<>()).add(bar));
    List<Optional<String>> phrases = new ArrayList<>();
    if (sameBars.size() <= sameCounts.size()) {
      sameBars.forEach((bars, counts) -> phrases.add(phrase(section, counts, bars)));
    } else {
      sameCounts.forEach((counts, bars) -> phrases.add(phrase(section, counts, bars)));
    }
    if (phrases.size() > MOST_GROUPS || phrases.stream().anyMatch(Optional::isEmpty)) {
      return Optional.empty();
    }
    return Optional.of(String.join(", ", phrases.stream().map(Optional::get).toList()));
  }

  private static Optional<String> phrase(Groove section, List<String> counts, List<Integer> bars) {
    return counts(section, counts, bars).map(words -> words + bars(section, bars));
  }

  private static Optional<String> counts(Groove section, List<String> counts, List<Integer> bars) {
    Meter meter = section.meter(bars.get(0));
    boolean alike = bars.stream().allMatch(bar -> section.meter(bar).hasSameBeats(meter));
    LinkedHashSet<String> left = new LinkedHashSet<>(counts);
    List<String> every = new ArrayList<>();
    if (alike && meter.beatCount() > 1) {
      for (Syllable syllable : Syllable.values()) {
        List<String> all = new ArrayList<>();
        for (int beat = 1; beat <= meter.beatCount(); beat++) {
          all.add(beat + syllable.sign());
        }
        if (left.containsAll(all)) {
          left.removeAll(all);
          every.add(syllable == Syllable.NONE ? "beat" : syllable.sign());
        }
      }
    }
    List<String> words = new ArrayList<>(left);
    if (!every.isEmpty()) {
      words.add(0, "every " + list(every));
    }
    return words.size() > MOST_COUNTS ? Optional.empty() : Optional.of("on " + list(words));
  }

  /** {@code in bars 2 and 4} with a space before it, or nothing where every bar is meant. */
  private static String bars(Groove section, List<Integer> bars) {
    boolean pickup = bars.get(0) == 0;
    int whole = bars.size() - (pickup ? 1 : 0);
    if (whole == section.bars()) {
      return "";
    }
    if (whole == 0) {
      return " in the pickup";
    }
    int first = bars.get(0);
    if (first > 1 && bars.size() > 2 && isEveryNth(bars, first, section.bars())) {
      return " in every " + ordinal(first) + " bar";
    }
    return bars.size() > MOST_COUNTS && !isRun(bars)
        ? " in " + bars.size() + " bars"
        : " in " + barNames(bars);
  }

  /** {@code bar 4}, {@code bars 2 and 4} or {@code bars 2 to 4}; 0 is the pickup. */
  static String barNames(List<Integer> bars) {
    int first = bars.get(0);
    if (bars.size() == 1) {
      return first == 0 ? "the pickup" : "bar " + first;
    }
    return isRun(bars)
        ? "bars " + first + " to " + bars.get(bars.size() - 1)
        : "bars " + list(bars.stream().map(String::valueOf).toList());
  }

  private static boolean isRun(List<Integer> bars) {
    return bars.size() > 2 && bars.get(bars.size() - 1) - bars.get(0) == bars.size() - 1;
  }

  private static boolean isEveryNth(List<Integer> bars, int n, int all) {
    for (int i = 0; i < bars.size(); i++) {
      if (bars.get(i) != n * (i + 1)) {
        return false;
      }
    }
    return bars.size() == all / n;
  }

  private static String ordinal(int n) {
    boolean teen = n / 10 % 10 == 1;
    return n + (teen ? "th" : n % 10 == 1 ? "st" : n % 10 == 2 ? "nd" : n % 10 == 3 ? "rd" : "th");
  }

  /** {@code 1, 2& and 4}. */
  static String list(List<String> items) {
    int last = items.size() - 1;
    return last <= 0
        ? String.join("", items)
        : String.join(", ", items.subList(0, last)) + " and " + items.get(last);
  }
}
