package tabor.groove;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/** What happened to the parts of a section, gathered and then joined into lines. */
final class Phrases {
  /** A part and what happened to it. */
  private record Phrase(String part, String words) {}

  private final List<Phrase> phrases = new ArrayList<>();

  void add(String part, String words) {
    phrases.add(new Phrase(part, words));
  }

  /** Joins parts that share their words, then words that share their part. */
  List<String> byPart() {
    Map<String, Set<String>> parts = group(Phrase::words, Phrase::part);
    Map<String, List<String>> joined = new LinkedHashMap<>();
    parts.forEach(
        (words, names) ->
            joined.computeIfAbsent(partNames(names), n -> new ArrayList<>()).add(words));
    List<String> lines = new ArrayList<>();
    joined.forEach((part, words) -> lines.add(part + ": " + String.join(", ", words)));
    return lines;
  }

  private Map<String, Set<String>> group(
      Function<Phrase, String> key, Function<Phrase, String> value) {
    Map<String, Set<String>> map = new LinkedHashMap<>();
    phrases.forEach(
        phrase ->
            map.computeIfAbsent(key.apply(phrase), k -> new LinkedHashSet<>())
                .add(value.apply(phrase)));
    return map;
  }

  private static String partNames(Set<String> names) {
    List<String> left = new ArrayList<>(names);
    for (boolean hands : new boolean[] {true, false}) {
      String right = hands ? "right hand" : "right foot";
      String other = hands ? "left hand" : "left foot";
      if (left.contains(right) && left.contains(other)) {
        left.set(left.indexOf(right), hands ? "hands" : "feet");
        left.remove(other);
      }
    }
    return PlaceWords.list(left);
  }
}
