package tabor.groove;

import tabor.words.Words;

/** A stroke in words, for whoever listens to a page. */
public final class StrokeWords {
  private StrokeWords() {}

  /** What is struck, with its level where it is not plain, and its ornaments. */
  public static String with(Stroke stroke, String struck, Words words) {
    String text = struck;
    if (stroke.level() != Level.PLAIN) {
      text = words.text("spoken.how", text, words.text("level." + Words.word(stroke.level())));
    }
    for (Ornament ornament : stroke.ornaments().list()) {
      text = words.text("spoken.how", text, words.text("ornament." + ornament.word()));
    }
    return text;
  }
}
