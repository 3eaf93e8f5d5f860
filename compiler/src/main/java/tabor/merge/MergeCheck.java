package tabor.merge;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.source.LineIndex;
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
    LineIndex lines = new LineIndex(merged.text());
    List<String> found = new ArrayList<>();
    for (Diagnostic diagnostic : merged.diagnostics()) {
      if (diagnostic.severity() != Severity.HINT
          && !known.contains(byMessage(diagnostic))
          && !known.contains(byLine(diagnostic))) {
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

  private static String byMessage(Diagnostic diagnostic) {
    return diagnostic.code().word()
        + "\n"
        + heading(diagnostic.spot())
        + "\n"
        + diagnostic.message();
  }

  /** A message may name what the other side has changed: the same line is then the same problem. */
  private static String byLine(Diagnostic diagnostic) {
    String text = diagnostic.spot().passage().text();
    int at = Math.min(diagnostic.spot().span().start(), text.length());
    String line = text.substring(lineStart(text, at), lineEnd(text, at)).strip();
    return diagnostic.code().word() + "\n" + heading(diagnostic.spot()) + "\n" + line + "\n";
  }

  /** Looked for from the place itself: a long section may have thousands of problems. */
  private static int lineStart(String text, int offset) {
    int start = offset;
    while (start > 0 && !isLineBreak(text.charAt(start - 1))) {
      start--;
    }
    return start;
  }

  private static int lineEnd(String text, int offset) {
    int end = offset;
    while (end < text.length() && !isLineBreak(text.charAt(end))) {
      end++;
    }
    return end;
  }

  private static boolean isLineBreak(char c) {
    return c == '\n' || c == '\r';
  }

  /** The first line of the section: the same section of two texts has the same. */
  private static String heading(Spot spot) {
    return spot.passage().text().lines().findFirst().orElse("").strip();
  }
}
