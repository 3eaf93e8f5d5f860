package tabor.resolve;

import java.util.List;
import tabor.diagnostic.Diagnostic;
import tabor.syntax.Beat;
import tabor.syntax.Line;

/** Looks at the letters of patterns, which are checked where they are written. */
public final class PatternChecks {
  private PatternChecks() {}

  /** Capitals in ghost parentheses of a pattern's places. */
  public static List<Diagnostic> check(Line heading, List<Beat.Element> places) {
    Problems problems = new Problems(null);
    new PartHints(problems, heading).ghosts(places, false);
    return problems.found();
  }
}
