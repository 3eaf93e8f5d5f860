package tabor.parse;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Lines that were read before, and their trees. Spans count from the line's start, so equal lines
 * share one tree. Two generations bound the memory: when the young one is full it becomes the old
 * one, and what was old is forgotten.
 */
final class LineMemory {
  /** Characters a generation holds; a tree takes some fifty bytes a character. */
  private static final int MOST_CHARACTERS = 1 << 17;

  /** A line of many bars is hardly written twice, and would drive out many short ones. */
  private static final int LONGEST_LINE = 1 << 12;

  private Map<String, LineParser.Result> young = new HashMap<>();
  private Map<String, LineParser.Result> old = new HashMap<>();
  private final int most;
  private int characters;

  LineMemory() {
    this(MOST_CHARACTERS);
  }

  /**
   * A memory of another size.
   *
   * @param most characters that a generation holds
   */
  LineMemory(int most) {
    this.most = most;
  }

  LineParser.@Nullable Result get(String line) {
    LineParser.Result found = young.get(line);
    if (found == null) {
      found = old.get(line);
      if (found != null) {
        put(line, found);
      }
    }
    return found;
  }

  void put(String line, LineParser.Result result) {
    if (line.length() > LONGEST_LINE) {
      return;
    }
    if (characters > most - line.length()) {
      old = young;
      young = new HashMap<>();
      characters = 0;
    }
    young.put(line, result);
    characters += line.length();
  }
}
