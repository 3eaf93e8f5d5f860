package tabor.merge;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import tabor.compile.Compiled;
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
  private MergeCheck() {}

  /** Errors and warnings of the merged text that neither side has, each in one line. */
  public static List<String> newProblems(Compiled ours, Compiled theirs, Compiled merged) {
    Set<String> known = new HashSet<>();
    for (Compiled side : List.of(ours, theirs)) {
      for (Diagnostic diagnostic : side.diagnostics()) {
        known.add(byMessage(diagnostic));
        known.add(byLine(diagnostic));
      }
    }
    List<String> found = new ArrayList<>();
    for (Diagnostic diagnostic : merged.diagnostics()) {
      if (diagnostic.severity() != Severity.HINT
          && !known.contains(byMessage(diagnostic))
          && !known.contains(byLine(diagnostic))) {
        int line = new LineIndex(merged.text()).lineOf(merged.span(diagnostic.spot()).start());
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

  private static String byMessage(Diagnostic diagnostic) {
    return diagnostic.code().word()
        + "\n"
        + heading(diagnostic.spot())
        + "\n"
        + diagnostic.message();
  }

  /** A message may name what the other side has changed: the same line is then the same problem. */
  private static String byLine(Diagnostic diagnostic) {
    Passage passage = diagnostic.spot().passage();
    LineIndex lines = new LineIndex(passage.text());
    int line = lines.lineOf(Math.min(diagnostic.spot().span().start(), passage.text().length()));
    String text = passage.text().substring(lines.lineStart(line), lines.lineEnd(line)).strip();
    return diagnostic.code().word() + "\n" + heading(diagnostic.spot()) + "\n" + text + "\n";
  }

  /** The first line of the section: the same section of two texts has the same. */
  private static String heading(Spot spot) {
    return spot.passage().text().lines().findFirst().orElse("").strip();
  }
}
