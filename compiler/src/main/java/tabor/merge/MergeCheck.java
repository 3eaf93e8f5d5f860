package tabor.merge;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tabor.compile.Compiled;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.source.LineIndex;
import tabor.source.Passage;
import tabor.source.Spot;

/**
 * Two sides that fit line by line may not fit as music: one takes a stroke out that the other
 * accents. What the merged text has and neither side had is such a conflict.
 */
public final class MergeCheck {
  private final Lines sections = new Lines();
  private final Set<Problem> known = new HashSet<>();

  /**
   * A problem as it is found again in another text: by its message, or by the line that it is in.
   *
   * @param heading the number of the first line of its section
   * @param line the number of its line; -1 where the message counts
   * @param message empty where the line counts
   */
  private record Problem(Code code, int heading, int line, String message) {}

  /**
   * Lines of sections as numbers, the same for lines that say the same. A line of a long section
   * may have thousands of problems: each is looked up, and the line not copied for each.
   */
  private static final class Lines {
    private final Map<String, Integer> numbers = new HashMap<>();
    private final Map<Passage, Numbered> passages = new IdentityHashMap<>();

    /** The lines of a section, and the numbers of those that were asked for; 0 for the others. */
    private record Numbered(LineIndex index, int[] numbers) {}

    /** The number of a line of the section of a spot. */
    private int number(Spot spot, int offset) {
      String text = spot.passage().text();
      Numbered numbered =
          passages.computeIfAbsent(
              spot.passage(),
              passage -> {
                LineIndex index = new LineIndex(text);
                return new Numbered(index, new int[index.lineCount()]);
              });
      LineIndex index = numbered.index();
      int line = index.lineOf(Math.min(offset, text.length()));
      if (numbered.numbers()[line] == 0) {
        String said = text.substring(index.lineStart(line), index.lineEnd(line)).strip();
        numbered.numbers()[line] = numbers.computeIfAbsent(said, none -> numbers.size() + 1);
      }
      return numbered.numbers()[line];
    }

    Problem byMessage(Diagnostic diagnostic) {
      int heading = number(diagnostic.spot(), 0);
      return new Problem(diagnostic.code(), heading, -1, diagnostic.message());
    }

    /**
     * A message may name what the other side has changed: the same line is then the same problem.
     */
    Problem byLine(Diagnostic diagnostic) {
      Spot spot = diagnostic.spot();
      return new Problem(diagnostic.code(), number(spot, 0), number(spot, spot.span().start()), "");
    }
  }

  /** Notes the problems that one side has; nothing of it is kept but these. */
  public void side(Compiled compiled) {
    for (Diagnostic diagnostic : compiled.diagnostics()) {
      known.add(sections.byMessage(diagnostic));
      known.add(sections.byLine(diagnostic));
    }
    sections.passages.clear();
  }

  /** Errors and warnings of the merged text that no side has, each in one line. */
  public List<String> newProblems(Compiled merged) {
    LineIndex lines = new LineIndex(merged.text());
    List<String> found = new ArrayList<>();
    for (Diagnostic diagnostic : merged.diagnostics()) {
      if (diagnostic.severity() != Severity.HINT
          && !known.contains(sections.byMessage(diagnostic))
          && !known.contains(sections.byLine(diagnostic))) {
        int line = lines.lineOf(merged.span(diagnostic.spot()).start());
        found.add(
            "line "
                + (line + 1)
                + ": "
                + diagnostic.message()
                + " ["
                + diagnostic.code().word()
                + "], which neither side has");
      }
    }
    return found;
  }
}
