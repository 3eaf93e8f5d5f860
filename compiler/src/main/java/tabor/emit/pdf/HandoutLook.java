package tabor.emit.pdf;

import tabor.groove.Caution;

/**
 * How a handout is printed.
 *
 * @param paper its size
 * @param large true for notes and letters to be read from a music stand a metre away
 * @param clean true for an examiner's copy: no counts, no stickings, no marks or words of change
 * @param caution what stands at the foot of every page; empty for nothing
 */
public record HandoutLook(Paper paper, boolean large, boolean clean, String caution) {
  /** The usual caution. */
  public static final String CAUTION = Caution.WORDS;

  /** A4, ordinary size, everything shown. */
  public static final HandoutLook PLAIN = new HandoutLook(Paper.A4, false, false, CAUTION);
}
