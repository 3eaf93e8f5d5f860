package tabor.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import tabor.format.Printer;
import tabor.syntax.Line;
import tabor.syntax.SectionSyntax;
import tabor.syntax.Statement;

/** Sections line by line, each line in its one spelling: what has no strokes is compared so. */
final class Lines {
  private Lines() {}

  /**
   * The lines of a section below its heading.
   *
   * @param which those that count
   * @param names names of sections that have become others
   */
  static List<String> of(
      SectionSyntax section, Predicate<Statement> which, Map<String, String> names) {
    return section.lines().stream()
        .filter(line -> which.test(line.statement()))
        .map(line -> renamed(printed(line), names))
        .toList();
  }

  /** A statement in its one spelling; a line that cannot be read as it stands. */
  static String printed(Line line) {
    return line.statement() instanceof Statement.Broken
        ? line.spot().text().strip()
        : Printer.print(line.statement());
  }

  private static String renamed(String line, Map<String, String> names) {
    if (names.isEmpty() || line.indexOf('"') >= 0) {
      return line;
    }
    List<String> words = new ArrayList<>();
    for (String word : line.split(" ", -1)) {
      words.add(names.getOrDefault(word, word));
    }
    return String.join(" ", words);
  }

  /** What is different between two rows of lines; a line in place of one with the same word. */
  static List<Detail> changes(List<String> before, List<String> after) {
    Alignment.Cost cost =
        new Alignment.Cost() {
          @Override
          public int pair(int left, int right) {
            String a = before.get(left);
            String b = after.get(right);
            return a.equals(b) ? 0 : word(a).equals(word(b)) ? 3 : Alignment.NEVER;
          }

          @Override
          public int left(int index) {
            return 2;
          }

          @Override
          public int right(int index) {
            return 2;
          }

          @Override
          public int leftNumber(int index) {
            return before.get(index).hashCode();
          }

          @Override
          public int rightNumber(int index) {
            return after.get(index).hashCode();
          }
        };
    List<Detail> found = new ArrayList<>();
    for (Alignment.Pair pair : Alignment.of(before.size(), after.size(), cost)) {
      String a = pair.left() < 0 ? null : before.get(pair.left());
      String b = pair.right() < 0 ? null : after.get(pair.right());
      if (a == null || !a.equals(b)) {
        found.add(new Detail("", a, b));
      }
    }
    return found;
  }

  private static String word(String line) {
    int space = line.indexOf(' ');
    return space < 0 ? line : line.substring(0, space);
  }
}
