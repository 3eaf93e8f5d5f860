package tabor.resolve;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.source.Span;
import tabor.syntax.Beat;
import tabor.syntax.LaneBar;
import tabor.syntax.Line;

/** What the first bar of a variation may not begin with: nothing stands before it. */
final class LaneStarts {
  private LaneStarts() {}

  /** True if a bar begins with strokes or a rest of its own; says so if it does not. */
  static boolean check(Problems problems, Line line, LaneBar bar) {
    Span held = bar.repeat() ? bar.span() : hold(bar);
    if (held == null) {
      return true;
    }
    problems.incomplete();
    problems.add(
        problems
            .make(
                Code.NOTHING_THERE,
                line,
                held,
                bar.repeat()
                    ? "each bar is a variation of its own, so none stands before this one"
                    : "each bar is a variation of its own, so no stroke goes on into it")
            .help(bar.repeat() ? "write the bar out" : "write a stroke, or a dot for a rest"));
    return false;
  }

  private static @Nullable Span hold(LaneBar bar) {
    if (bar.beats().isEmpty()) {
      return null;
    }
    List<Beat.Element> elements = bar.beats().get(0).elements();
    while (!elements.isEmpty()) {
      Beat.Element first = elements.get(0);
      if (first instanceof Beat.Hold) {
        return first.span();
      }
      elements = first instanceof Beat.Group group ? group.elements() : List.of();
    }
    return null;
  }
}
