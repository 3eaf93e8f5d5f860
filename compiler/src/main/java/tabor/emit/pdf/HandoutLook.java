package tabor.emit.pdf;

/**
 * How a handout is printed.
 *
 * @param paper its size
 * @param large true for notes and letters to be read from a music stand a metre away
 * @param clean true for an examiner's copy: no counts, no stickings, no marks or words of change
 * @param caution what stands at the foot of every page; empty for nothing
 */
public record HandoutLook(Paper paper, boolean large, boolean clean, String caution) {
  /**
   * The usual caution. What it says follows NIOSH publications on noise and on musicians (98-126,
   * 1998; Workplace Solutions, 2015) and general practice; the words are ours.
   */
  public static final String CAUTION =
      "Drums are loud, and practice repeats itself. Play softly where you can, protect your ears,"
          + " take breaks. Stop if something hurts, tingles or rings. Local rules and the advice of"
          + " a doctor, audiologist or other licensed professional come first.";

  /** A4, ordinary size, everything shown. */
  public static final HandoutLook PLAIN = new HandoutLook(Paper.A4, false, false, CAUTION);
}
