package tabor.cli;

import java.util.Set;
import java.util.concurrent.ConcurrentSkipListSet;
import org.jspecify.annotations.Nullable;
import tabor.groove.Lesson;
import tabor.words.Language;
import tabor.words.Words;

/**
 * The language of a page about many lessons: the one that is asked for, else the lessons' own if
 * they all have the same, else English. Safe for several threads.
 */
final class PageLanguage {
  private final @Nullable Language asked;
  private final Set<Language> seen = new ConcurrentSkipListSet<>();

  /**
   * @param word as typed; null if the lessons decide
   * @throws Failure for a word that names no language
   */
  PageLanguage(@Nullable String word) {
    this.asked =
        word == null
            ? null
            : Language.of(word)
                .orElseThrow(() -> Failure.usage("--language takes de, en, es or fr, not " + word));
  }

  /** Takes note of a lesson on the page. */
  void note(Lesson lesson) {
    seen.add(lesson.setting().wording().language());
  }

  /** The words of the page, once all lessons are noted. */
  Words words() {
    if (asked != null) {
      return Words.of(asked);
    }
    return seen.size() == 1 ? Words.of(seen.iterator().next()) : Words.english();
  }
}
