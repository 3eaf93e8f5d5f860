package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import tabor.groove.CountingWords;
import tabor.rhythm.Count;
import tabor.rhythm.Count.Syllable;
import tabor.rhythm.CountNames;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;
import tabor.syntax.CountRef;

/** Counts with words of the lesson as counts with our own syllables. */
public final class SaidCounts {
  /** What a dotted meter is counted in where its eighths go through. */
  private static final Time EIGHTH = Time.of(1, 8);

  private SaidCounts() {}

  /**
   * What a count may mean: itself where it has no word of the lesson and its beat is one of the
   * bar; else one count with its division named for each meaning of its word, the coarsest first.
   * Empty where the lesson is not counted with that word.
   */
  public static List<Count> of(CountRef written, CountingWords words, Meter meter) {
    Count count = written.count();
    String word = written.word();
    if (word == null) {
      return List.of(count.beat() > meter.beatCount() ? through(count, words, meter) : count);
    }
    List<Count> found = new ArrayList<>(1);
    for (CountingWords.Meaning meaning : words.meanings(word)) {
      found.add(new Count(count.beat(), meaning.syllable(), count.places(), meaning.division()));
    }
    return found;
  }

  /**
   * What a count that is read as ours would mean by the words of the lesson, each with its division
   * named; empty where they do not have it.
   */
  static List<Count> theirs(CountRef written, CountingWords words, Meter meter) {
    Count count = written.count();
    if (written.word() != null || count.division() != 0) {
      return List.of();
    }
    if (count.syllable() == Syllable.NONE) {
      Count through = through(count, words, meter);
      return through.equals(count) ? List.of() : List.of(through);
    }
    List<Count> found = new ArrayList<>(0);
    for (CountingWords.Meaning meaning : words.meanings(count.syllable().sign())) {
      if (meaning.division() > 0) {
        found.add(new Count(count.beat(), meaning.syllable(), count.places(), meaning.division()));
      }
    }
    return found;
  }

  /**
   * The count of an eighth that is counted from the barline on, such as 5 in 6/8, by its beat; the
   * count itself where eighths do not go through, or where the bar has no such eighth.
   */
  static Count through(Count count, CountingWords words, Meter meter) {
    boolean plain = count.syllable() == Syllable.NONE && count.places().isEmpty();
    if (!plain || count.division() != 0 || !words.goesThrough(meter)) {
      return count;
    }
    Time at = EIGHTH.times(count.beat() - 1);
    return count.beat() > 0 && at.before(meter.bar()) ? CountNames.of(at, meter) : count;
  }
}
