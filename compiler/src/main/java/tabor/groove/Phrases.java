package tabor.groove;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import tabor.kit.Limb;
import tabor.words.Words;

/** What happened to the parts of a section, gathered and then joined into lines. */
final class Phrases {
  /** A part and what happened to it. */
  private record Phrase(String part, String words) {}

  private final List<Phrase> phrases = new ArrayList<>();
  private final Words words;

  Phrases(Words words) {
    this.words = words;
  }

  void add(String part, String said) {
    phrases.add(new Phrase(part, said));
  }

  /** Joins parts that share their words, then words that share their part. */
  List<String> byPart() {
    Map<String, Set<String>> parts = group(Phrase::words, Phrase::part);
    Map<String, List<String>> joined = new LinkedHashMap<>();
    parts.forEach(
        (said, names) ->
            joined.computeIfAbsent(partNames(names), n -> new ArrayList<>()).add(said));
    List<String> lines = new ArrayList<>();
    joined.forEach((part, said) -> lines.add(words.text("change.line", part, words.list(said))));
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

  private String partNames(Set<String> names) {
    List<String> left = new ArrayList<>(names);
    for (boolean hands : new boolean[] {true, false}) {
      String right = words.limb(hands ? Limb.RIGHT_HAND : Limb.RIGHT_FOOT);
      String other = words.limb(hands ? Limb.LEFT_HAND : Limb.LEFT_FOOT);
      if (left.contains(right) && left.contains(other)) {
        left.set(left.indexOf(right), words.text(hands ? "limb.hands" : "limb.feet"));
        left.remove(other);
      }
    }
    return words.and(left);
  }
}
