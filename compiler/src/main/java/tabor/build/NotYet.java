package tabor.build;

import java.util.Optional;
import tabor.groove.Lesson;

/** What a lesson asks of its outputs that they do not have yet. */
public final class NotYet {
  private NotYet() {}

  /** A sentence that names it; empty where nothing is left out. */
  public static Optional<String> of(Lesson lesson) {
    return lesson.extras().language() == null
        ? Optional.empty()
        : Optional.of("what is printed does not follow this line yet: language");
  }
}
