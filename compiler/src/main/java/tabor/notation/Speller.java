package tabor.notation;

import java.util.List;
import java.util.Set;
import tabor.groove.Groove;
import tabor.groove.Stroke;

/** Writes a section in notes. */
public final class Speller {
  private Speller() {}

  /** Spells a section with nothing marked as changed. */
  public static Score spell(Groove groove) {
    return spell(groove, Set.of());
  }

  /**
   * Spells a section.
   *
   * @param changed the strokes to mark as changed
   */
  public static Score spell(Groove groove, Set<Stroke> changed) {
    return new Score(groove, List.of());
  }
}
