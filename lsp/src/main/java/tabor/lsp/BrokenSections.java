package tabor.lsp;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Section;
import tabor.source.Passage;

/**
 * Which sections of a file do not say yet what they are to: those with errors, and what follows.
 */
final class BrokenSections {
  private BrokenSections() {}

  /** The passages that errors stand in. */
  static Set<Passage> passages(Compiled compiled) {
    Set<Passage> found = Collections.newSetFromMap(new IdentityHashMap<>());
    for (Diagnostic diagnostic : compiled.diagnostics()) {
      if (diagnostic.severity() == Severity.ERROR) {
        found.add(diagnostic.spot().passage());
      }
    }
    return found;
  }

  /** True for a section with errors, or one that rests on such a section. */
  static boolean isBroken(Section section, Set<Passage> wrong) {
    if (wrong.contains(section.heading().passage())) {
      return true;
    }
    if (section instanceof Groove groove) {
      return groove.base() != null && isBroken(groove.base(), wrong);
    }
    return section instanceof Chart chart
        && played(chart).stream().anyMatch(groove -> isBroken(groove, wrong));
  }

  private static List<Groove> played(Chart chart) {
    return chart.items().stream()
        .flatMap(
            item ->
                item instanceof Chart.Play play
                    ? play.turns().stream().map(Chart.Turn::groove)
                    : item instanceof Chart.Climb climb
                        ? java.util.stream.Stream.of(climb.groove())
                        : java.util.stream.Stream.<Groove>empty())
        .toList();
  }
}
