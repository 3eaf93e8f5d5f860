package tabor.groove;

import tabor.words.Words;

/** What every page that invites to practice says about hearing and strain. */
public final class Caution {
  /**
   * The usual caution. What it says follows NIOSH publications on noise and on musicians (98-126,
   * 1998; Workplace Solutions, 2015) and general practice; the words are ours.
   */
  public static final String WORDS =
      "Drums are loud, and practice repeats itself. Play softly where you can, protect your ears,"
          + " take breaks. Stop if something hurts, tingles or rings. Local rules and the advice of"
          + " a doctor, audiologist or other licensed professional come first.";

  private Caution() {}

  /** The usual caution in a language. */
  public static String in(Words words) {
    return words.text("caution");
  }
}
