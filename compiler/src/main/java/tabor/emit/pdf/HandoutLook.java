package tabor.emit.pdf;

import tabor.groove.Caution;

/**
 * How a handout is printed.
 *
 * @param paper its size
 * @param large true for notes and letters to be read from a music stand a metre away
 * @param clean true for an examiner's copy: no counts, no stickings, no marks or words of change
 * @param caution what stands at the foot of every page; empty for nothing
 * @param note what stands under the title, such as for whom the page is; empty for nothing
 * @param columns narrow sections side by side at most, 1 to 3; 0 for as many as fit well
 * @param sections what single sections ask for
 */
public record HandoutLook(
    Paper paper,
    boolean large,
    boolean clean,
    String caution,
    String note,
    int columns,
    SectionWishes sections) {
  /** The usual caution. */
  public static final String CAUTION = Caution.WORDS;

  /** A4, ordinary size, everything shown. */
  public static final HandoutLook PLAIN = new HandoutLook(Paper.A4, false, false, CAUTION);

  /** Throws {@link IllegalArgumentException} for more than three columns. */
  public HandoutLook {
    if (columns < 0 || columns > 3) {
      throw new IllegalArgumentException("columns " + columns);
    }
  }

  /** No note, and sections laid out as looks best. */
  public HandoutLook(Paper paper, boolean large, boolean clean, String caution) {
    this(paper, large, clean, caution, "", 0, SectionWishes.NONE);
  }

  /** The same with a note under the title. */
  public HandoutLook withNote(String text) {
    return new HandoutLook(paper, large, clean, caution, text, columns, sections);
  }

  /** The same with so many columns. */
  public HandoutLook withColumns(int most) {
    return new HandoutLook(paper, large, clean, caution, note, most, sections);
  }

  /** The same with the wishes of its sections. */
  public HandoutLook withSections(SectionWishes wishes) {
    return new HandoutLook(paper, large, clean, caution, note, columns, wishes);
  }
}
