package tabor.build;

import java.util.Optional;
import tabor.groove.CountingWords;
import tabor.groove.Lesson;

/** What a lesson asks of its outputs that they do not have yet. */
public final class NotYet {
  private NotYet() {}

  /** A sentence that names it; empty where nothing is left out. */
  public static Optional<String> of(Lesson lesson) {
    boolean say = !lesson.extras().words().equals(CountingWords.OURS);
    boolean language = lesson.extras().language() != null;
    if (!say && !language) {
      return Optional.empty();
    }
    String lines = say && language ? "say and language" : say ? "say" : "language";
    return Optional.of("what is printed does not follow these lines yet: " + lines);
  }
}
