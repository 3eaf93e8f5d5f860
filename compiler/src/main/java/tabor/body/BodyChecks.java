package tabor.body;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.kit.Limits;

/** Checks whether two hands and two feet can play a finished section. */
public final class BodyChecks {
  private BodyChecks() {}

  /**
   * The diagnostics of a section. A problem that the section inherited is not among them: at least
   * one of the strokes in question has its spot in the section's own passage, or the section's
   * setting brought it about; then it stands at the heading.
   */
  public static List<Diagnostic> check(Groove groove) {
    Findings findings = new Findings(groove);
    all(groove, findings);
    return findings.diagnostics(() -> inherited(groove));
  }

  /**
   * The diagnostics of a chart: what becomes too fast or too far at its fastest tempo of a section
   * and is not so already at the section's own. They stand at the chart's heading.
   */
  public static List<Diagnostic> check(Chart chart) {
    return ChartChecks.check(chart);
  }

  private static List<Finding> inherited(Groove groove) {
    List<Finding> found = new ArrayList<>();
    Groove base = groove.base();
    if (base != null) {
      all(base, found::add);
    }
    return found;
  }

  private static void all(Groove groove, Consumer<Finding> found) {
    Limits limits = groove.setting().kit().limitsInForce();
    ClashChecks.each(groove, found);
    RollChecks.each(groove, found);
    PaceChecks.each(groove, groove.setting().tempo(), limits, found);
  }
}
