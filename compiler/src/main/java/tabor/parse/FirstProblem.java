package tabor.parse;

import org.jspecify.annotations.Nullable;
import tabor.source.Span;

/** The first thing that is wrong with what a line says; the rest is not worth the reader's time. */
final class FirstProblem {
  private @Nullable SyntaxProblem problem;

  /** Forgets the line before. */
  void clear() {
    problem = null;
  }

  /** What is wrong with the line; null if nothing is. */
  @Nullable SyntaxProblem problem() {
    return problem;
  }

  /** Reports a problem unless the line has one. */
  void report(SyntaxProblem found) {
    if (problem == null) {
      problem = found;
    }
  }

  /** Reports a syntax error unless the line has one. */
  void report(Span span, String message, @Nullable String help) {
    report(SyntaxProblem.of(span, message, help));
  }

  /** Reports a word that is said where once is meant if it was said before. */
  void once(boolean before, Span span, String word) {
    if (before) {
      report(span, "`" + word + "` is said twice on this line", "Leave one of them out");
    }
  }
}
