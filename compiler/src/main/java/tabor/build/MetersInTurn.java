package tabor.build;

import java.util.Optional;
import tabor.groove.Groove;
import tabor.groove.Lesson;

/**
 * Sections whose bars are not all equally long, because several meters are taken in turn. They are
 * checked and listed; sound, grid and pages cannot show them yet, and a wrong page would be worse
 * than none.
 */
public final class MetersInTurn {
  private MetersInTurn() {}

  /** Why nothing is made of a lesson yet, and what to do instead; empty if all can be made. */
  public static Optional<String> refusal(Lesson lesson) {
    for (Groove groove : lesson.grooves()) {
      if (!groove.setting().meters().hasEqualBars()) {
        return Optional.of(
            "“"
                + groove.name()
                + "” takes "
                + groove.setting().meters()
                + " in turn; such a section is checked and listed, but sound, grid and pages"
                + " cannot show it yet: write a groove for each meter and play them in turn in a"
                + " chart");
      }
    }
    return Optional.empty();
  }
}
