package tabor.groove;

import tabor.words.Words;

/**
 * What a text about the music is written with.
 *
 * @param words of a language
 * @param counts how places are counted
 */
public record Terms(Words words, CountLabels counts) {
  /** English, with our own counts: what lists and messages have. */
  public static final Terms PLAIN = new Terms(Words.english(), new CountLabels(CountingWords.OURS));

  /** What the printed page of a section has. */
  public static Terms of(Groove groove) {
    SectionWords wording = groove.setting().wording();
    return new Terms(Words.of(wording.language()), new CountLabels(wording.printed()));
  }
}
