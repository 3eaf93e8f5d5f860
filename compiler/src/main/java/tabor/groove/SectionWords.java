package tabor.groove;

import tabor.words.Language;

/**
 * The words that a section is counted and printed with.
 *
 * @param read what is counted with in places, besides our own syllables
 * @param printed what is printed; a student may have words of their own
 * @param language of the fixed words of printed outputs
 */
public record SectionWords(CountingWords read, CountingWords printed, Language language) {
  /** Our own syllables, in English. */
  public static final SectionWords USUAL =
      new SectionWords(CountingWords.OURS, CountingWords.OURS, Language.EN);
}
