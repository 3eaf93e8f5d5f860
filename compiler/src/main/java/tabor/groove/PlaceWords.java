package tabor.groove;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import tabor.lists.Lists;
import tabor.rhythm.Count.Syllable;
import tabor.rhythm.CountNames;
import tabor.rhythm.Meter;
import tabor.words.Words;

/**
 * Says where strokes stand: {@code on 1 and 3}, {@code on every &}, {@code on 4 in bars 2 to 4}.
 */
final class PlaceWords {
  private static final int MOST_COUNTS = 6;
  private static final int MOST_GROUPS = 3;

  private final Groove section;
  private final Terms terms;
  private final Words words;
  private final Map<String, String> labels = new HashMap<>();

  /** Places of a section. */
  PlaceWords(Groove section, Terms terms) {
    this.section = section;
    this.terms = terms;
    this.words = terms.words();
  }

  /** The places of strokes of a section; empty where saying them all would be no help. */
  Optional<String> of(Collection<Stroke> strokes) {
    Map<Integer, List<String>> byBar = new TreeMap<>();
    Map<String, TreeSet<Integer>> byCount = new LinkedHashMap<>();
    List<Stroke> sorted = new ArrayList<>(strokes);
    sorted.sort((a, b) -> a.at().compareTo(b.at()));
    for (Stroke stroke : sorted) {
      String count = CountNames.of(stroke.slot(), section.meter(stroke.bar())).toString();
      labels.putIfAbsent(count, terms.counts().full(stroke.slot(), section.meter(stroke.bar())));
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
      sameBars.forEach((bars, counts) -> phrases.add(phrase(counts, bars)));
    } else {
      sameCounts.forEach((counts, bars) -> phrases.add(phrase(counts, bars)));
    }
    if (phrases.size() > MOST_GROUPS || Lists.any(phrases, Optional::isEmpty)) {
      return Optional.empty();
    }
    return Optional.of(words.list(Lists.map(phrases, Optional::get)));
  }

  private Optional<String> phrase(List<String> counts, List<Integer> bars) {
    String in = bars(bars);
    return counts(counts, bars).map(on -> in.isEmpty() ? on : words.text("place.after", on, in));
  }

  private Optional<String> counts(List<String> counts, List<Integer> bars) {
    Meter meter = section.meter(bars.get(0));
    boolean alike = Lists.all(bars, bar -> section.meter(bar).hasSameBeats(meter));
    LinkedHashSet<String> left = new LinkedHashSet<>(counts);
    List<String> every = new ArrayList<>();
    if (alike && meter.beatCount() > 1 && !terms.counts().goThrough(meter)) {
      for (Syllable syllable : Syllable.values()) {
        List<String> all = new ArrayList<>();
        for (int beat = 1; beat <= meter.beatCount(); beat++) {
          all.add(beat + syllable.sign());
        }
        if (left.containsAll(all)) {
          left.removeAll(all);
          every.add(
              syllable == Syllable.NONE
                  ? words.text("place.beat")
                  : label("1" + syllable.sign()).substring(1));
        }
      }
    }
    List<String> said = new ArrayList<>(Lists.map(left, this::label));
    if (!every.isEmpty()) {
      said.add(0, words.text("place.every", words.and(every)));
    }
    return said.size() > MOST_COUNTS
        ? Optional.empty()
        : Optional.of(words.text("place.on", words.and(said)));
  }

  private String label(String count) {
    return labels.getOrDefault(count, count);
  }

  /** {@code in bars 2 and 4}, or nothing where every bar is meant. */
  String bars(Collection<Integer> all) {
    List<Integer> bars = new ArrayList<>(all);
    Collections.sort(bars);
    boolean pickup = bars.get(0) == 0;
    int whole = bars.size() - (pickup ? 1 : 0);
    if (whole == section.bars()) {
      return "";
    }
    if (whole == 0) {
      return words.text("place.pickup");
    }
    int first = bars.get(0);
    if (first > 1 && bars.size() > 2 && isEveryNth(bars, first, section.bars())) {
      return words.text("place.every-nth", first, ordinal(first));
    }
    if (bars.size() > MOST_COUNTS && !isRun(bars)) {
      return words.text("place.bars-many", bars.size());
    }
    return bars.size() == 1
        ? words.text("place.bar", first)
        : isRun(bars)
            ? words.text("place.bars-run", first, bars.get(bars.size() - 1))
            : words.text("place.bars", words.and(Lists.map(bars, String::valueOf)));
  }

  /** {@code bar 4}, {@code bars 2 and 4} or {@code bars 2 to 4}; 0 is the pickup. */
  String barNames(List<Integer> bars) {
    int first = bars.get(0);
    if (bars.size() == 1) {
      return first == 0 ? words.text("bars.pickup") : words.text("bars.one", first);
    }
    return isRun(bars)
        ? words.text("bars.run", first, bars.get(bars.size() - 1))
        : words.text("bars.some", words.and(Lists.map(bars, String::valueOf)));
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

  /** As English writes it; patterns of other languages take the number. */
  private static String ordinal(int n) {
    boolean teen = n / 10 % 10 == 1;
    return n + (teen ? "th" : n % 10 == 1 ? "st" : n % 10 == 2 ? "nd" : n % 10 == 3 ? "rd" : "th");
  }
}
