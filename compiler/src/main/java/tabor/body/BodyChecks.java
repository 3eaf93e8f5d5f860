package tabor.body;

import java.util.List;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;

/** Checks whether two hands and two feet can play a finished section. */
public final class BodyChecks {
  private BodyChecks() {}

  /**
   * The diagnostics of a section. A problem that the section inherited is not among them: at least
   * one of the strokes in question has its spot in the section's own passage.
   */
  public static List<Diagnostic> check(Groove groove) {
    return List.of();
  }
}
