package tabor.resolve;

import java.util.List;
import tabor.diagnostic.Diagnostic;
import tabor.syntax.Beat;
import tabor.syntax.Line;

/** Looks at the letters of patterns, which are checked where they are written. */
public final class GhostChecks {
  private GhostChecks() {}

  /** Capitals in ghost parentheses of a pattern's places. */
  public static List<Diagnostic> pattern(Line heading, List<Beat.Element> places) {
    Problems problems = new Problems(null);
    PartHints.ghosts(problems, heading, places, false);
    return problems.found();
  }
}
