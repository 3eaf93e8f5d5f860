package tabor.compare;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Section;
import tabor.syntax.SectionKind;

/**
 * What is different in one section.
 *
 * @param state whether it is new, gone, or there in both
 * @param kind what it is; what it was where it is gone
 * @param label what it is called: its name, or its title in quotes where it has none
 * @param was what it was called; null where that is the same, or it is new
 * @param before the section as it was; null where there is none or it has errors
 * @param after the section as it is; null where there is none or it has errors
 * @param details title, settings, dynamics and prose
 * @param bars which bar was which, 0 standing for none; empty where every bar has kept its number
 * @param strokes what is struck otherwise
 */
public record SectionChange(
    State state,
    SectionKind kind,
    String label,
    @Nullable String was,
    @Nullable Section before,
    @Nullable Section after,
    List<Detail> details,
    List<Bars> bars,
    List<StrokeChange> strokes) {

  /** What became of a section. */
  public enum State {
    NEW,
    GONE,
    CHANGED
  }

  /**
   * A bar and the one that it was, both 1-based.
   *
   * @param before 0 for a new bar
   * @param after 0 for a bar that is left out
   */
  public record Bars(int before, int after) {}

  /** Copies the lists. */
  public SectionChange {
    details = List.copyOf(details);
    bars = List.copyOf(bars);
    strokes = List.copyOf(strokes);
  }

  /** True if there is nothing to say. */
  public boolean isEmpty() {
    return state == State.CHANGED
        && was == null
        && details.isEmpty()
        && bars.isEmpty()
        && strokes.isEmpty();
  }

  /** True for a variation of a sheet. */
  public boolean isVariation() {
    return kind == SectionKind.SHEET && (before instanceof Groove || after instanceof Groove);
  }

  /** {@code step answer}. */
  public String name() {
    return kind.word() + " " + label;
  }
}
