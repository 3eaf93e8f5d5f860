package tabor.ide;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tabor.groove.CountingWords.Named;

/** What may be said next on a line such as {@code say fours e und e}. */
final class SaySyllables {
  private SaySyllables() {}

  /** The half of a beat in German, French and Spanish classes. Common practice, no source. */
  private static final List<String> HALVES = List.of("und", "et", "y");

  /**
   * Words for the next place of the beat, each with the set that it is from; empty where the beat
   * has all its words.
   *
   * @param words of the line so far
   */
  static Map<String, String> next(List<String> words) {
    Map<String, String> found = new LinkedHashMap<>();
    if (words.size() < 2) {
      return found;
    }
    int division =
        switch (words.get(1)) {
          case "twos" -> 2;
          case "threes" -> 3;
          case "fours" -> 4;
          default -> 1;
        };
    int place = words.size() - 2;
    for (Named set : Named.values()) {
      List<String> said = set.words().of(division);
      if (place < said.size()) {
        found.merge(said.get(place), set.word(), (a, b) -> a + ", " + b);
      }
    }
    if (division != 1 && 2 * (place + 1) == division) {
      HALVES.forEach(word -> found.putIfAbsent(word, "the half of the beat"));
    }
    if (division == 3 && place < 2) {
      found.putIfAbsent(place == 0 ? "&" : "a", "as printed without say");
    }
    return found;
  }
}
