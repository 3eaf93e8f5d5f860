package tabor.fuzz;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** Makes a text that fails smaller, as long as it fails in the same way. */
final class Minimiser {
  private final Predicate<String> fails;
  private final long until;

  /**
   * @param fails true for a text that still fails in the same way
   * @param nanos how long it may take
   */
  Minimiser(Predicate<String> fails, long nanos) {
    this.fails = fails;
    this.until = System.nanoTime() + nanos;
  }

  /** A text from which neither a line nor a few characters can be taken away. */
  String smallest(String text) {
    List<String> lines = new ArrayList<>(List.of(text.split("(?<=\n)", -1)));
    String shorter = String.join("", without(lines));
    List<String> characters = new ArrayList<>();
    shorter.codePoints().forEach(point -> characters.add(Character.toString(point)));
    return String.join("", without(characters));
  }

  /** Takes away runs of parts, halves first, then shorter ones. */
  private List<String> without(List<String> parts) {
    List<String> left = parts;
    for (int size = Math.max(1, left.size() / 2); size >= 1; size /= 2) {
      for (int from = 0; from < left.size(); ) {
        if (System.nanoTime() - until > 0) {
          return left;
        }
        List<String> fewer = new ArrayList<>(left.subList(0, from));
        fewer.addAll(left.subList(Math.min(left.size(), from + size), left.size()));
        if (fails.test(String.join("", fewer))) {
          left = fewer;
        } else {
          from += size;
        }
      }
    }
    return left;
  }
}
