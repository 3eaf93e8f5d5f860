package tabor.parse;

import java.util.List;

/** Lists in sentences. */
final class Wording {
  private Wording() {}

  /** {@code a}, {@code a or b}, {@code a, b or c}. */
  static String or(List<String> items) {
    int last = items.size() - 1;
    return last <= 0
        ? String.join("", items)
        : String.join(", ", items.subList(0, last)) + " or " + items.get(last);
  }
}
