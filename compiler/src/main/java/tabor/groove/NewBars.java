package tabor.groove;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tabor.lists.Lists;
import tabor.rhythm.Time;
import tabor.words.Words;

/**
 * Bars that are another music altogether, such as a fill: to list what happened to each part there
 * would help nobody, so they are only named, with the count from which they are new.
 *
 * @param words {@code bars 4 and 8: new from 3 on}, an entry for each place to begin
 * @param others the comparison with those bars left out of account
 */
record NewBars(List<String> words, Comparison others) {
  /** So few changed strokes can be told one by one. */
  static final int FEW = 5;

  /** So few lists of places are read easily. */
  private static final int FEW_PLACES = 2;

  /** The bars in which most of what is there came, went or moved; never all bars. */
  static NewBars find(Comparison found, Terms terms) {
    Map<Integer, List<Stroke>> touched = new TreeMap<>();
    for (Stroke stroke : found.touched()) {
      touched.computeIfAbsent(stroke.bar(), bar -> new ArrayList<>()).add(stroke);
    }
    Map<Integer, Time> starts = new TreeMap<>();
    touched.forEach(
        (bar, strokes) -> {
          Time start = Collections.min(Lists.map(strokes, Stroke::at));
          long now = Lists.count(found.now(), s -> s.bar() == bar && s.at().compareTo(start) >= 0);
          if (strokes.size() >= FEW
              && strokes.size() * 2L >= now
              && StepWords.places(found.where(s -> s.bar() == bar)) > FEW_PLACES) {
            starts.put(bar, start);
          }
        });
    if (starts.isEmpty() || starts.size() >= found.step().bars()) {
      return new NewBars(List.of(), found);
    }
    return new NewBars(
        words(found.step(), starts, terms),
        found.where(stroke -> !starts.containsKey(stroke.bar())));
  }

  private static List<String> words(Groove step, Map<Integer, Time> starts, Terms terms) {
    Words words = terms.words();
    Map<String, List<Integer>> byStart = new LinkedHashMap<>();
    starts.forEach(
        (bar, start) -> {
          String from =
              start.sign() == 0
                  ? words.text("change.new")
                  : words.text("change.new-from", terms.counts().full(start, step.meter(bar)));
          byStart.computeIfAbsent(from, s -> new ArrayList<>()).add(bar);
        });
    PlaceWords places = new PlaceWords(step, terms);
    List<String> said = new ArrayList<>();
    byStart.forEach(
        (from, bars) -> said.add(words.text("change.line", places.barNames(bars), from)));
    return said;
  }
}
