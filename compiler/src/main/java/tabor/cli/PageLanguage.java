package tabor.cli;

import java.util.Set;
import java.util.concurrent.ConcurrentSkipListSet;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import tabor.groove.Lesson;
import tabor.words.Language;
import tabor.words.Words;

/**
 * The language of a page about many lessons, with the option that asks for one: the one that is
 * asked for, else the lessons' own if they all have the same, else English. Safe for several
 * threads.
 */
final class PageLanguage {
  @Option(
      names = "--language",
      paramLabel = "LANG",
      description =
          "The language of the page: de, en, es or fr. If not given, that of the lessons if it is"
              + " the same in all, else en.")
  private @Nullable String word;

  private @Nullable Language asked;
  private final Set<Language> seen = new ConcurrentSkipListSet<>();

  /** True if a language is asked for. */
  boolean isAsked() {
    return word != null;
  }

  /**
   * Reads the word of the option, before any lesson is read.
   *
   * @throws Failure for a word that names no language
   */
  void read() {
    String typed = word;
    if (typed != null) {
      asked =
          Language.of(typed)
              .orElseThrow(() -> Failure.usage("--language takes de, en, es or fr, not " + typed));
    }
  }

  /** Takes note of a lesson on the page. */
  void note(Lesson lesson) {
    seen.add(lesson.setting().wording().language());
  }

  /** The words of the page, once all lessons are noted. */
  Words words() {
    Language one = asked;
    if (one != null) {
      return Words.of(one);
    }
    return seen.size() == 1 ? Words.of(seen.iterator().next()) : Words.english();
  }
}
