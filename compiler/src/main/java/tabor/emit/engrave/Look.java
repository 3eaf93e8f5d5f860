package tabor.emit.engrave;

import tabor.groove.ChartSigns;
import tabor.groove.Groove;

/**
 * What is drawn of a section, and how wide.
 *
 * @param width width of a system in staff spaces, {@link #LEAST} or more
 * @param counts the count above the notes, where the section shows it
 * @param annotated the sticking below, where the section shows it, and marks at strokes that a step
 *     changed
 * @param heading the section's title stands above its first system
 * @param tempo whether tempo and swing stand above the first system
 * @param lines where lines should break
 * @param ending how the last bar ends
 * @param boxes boxes to write in stand in place of the sticking of the hands
 * @param blank bars are left empty to be written on: staff, clef, meter and the counts of the beats
 * @param signs what the charts of the lesson say at its notes
 */
public record Look(
    double width,
    boolean counts,
    boolean annotated,
    boolean heading,
    Tempo tempo,
    LineWishes lines,
    Ending ending,
    boolean boxes,
    boolean blank,
    ChartSigns signs) {
  /** The narrowest system, in staff spaces: a column of three on a page. */
  public static final double LEAST = 18;

  /** How the last bar of a section ends. */
  public enum Ending {
    /** With a repeat sign: it is played over and over. */
    LOOP,
    /** With a thin and a thick line. */
    FINAL,
    /** With a barline: it leads on to what comes next. */
    OPEN
  }

  /** Whether a section's tempo is shown. */
  public enum Tempo {
    HIDDEN,
    /** The tempo, and the swing where there is one. */
    SHOWN,
    /** The tempo and the feel, straight too: where the rest of the page swings. */
    WITH_FEEL;

    private static Tempo of(boolean shown) {
      return shown ? SHOWN : HIDDEN;
    }
  }

  /** Everything, 100 staff spaces wide: the width of a printed page at a staff of 7 mm. */
  public static final Look FULL = new Look(100, true, true);

  /** Throws {@link IllegalArgumentException} for a width that no bar can be drawn in. */
  public Look {
    if (!(width >= LEAST)) {
      throw new IllegalArgumentException("width " + width);
    }
  }

  /** An annotated loop without a title, broken as looks best. */
  public Look(double width, boolean counts, boolean tempo) {
    this(
        width,
        counts,
        true,
        false,
        Tempo.of(tempo),
        LineWishes.NONE,
        Ending.LOOP,
        false,
        false,
        ChartSigns.NONE);
  }

  /** The same with the section's title above it: for a picture that stands alone. */
  public Look withHeading() {
    return new Look(width, counts, annotated, true, tempo, lines, ending, boxes, blank, signs);
  }

  /** The same at another width. */
  public Look withWidth(double other) {
    return new Look(other, counts, annotated, heading, tempo, lines, ending, boxes, blank, signs);
  }

  /** The same with other wishes for its lines. */
  public Look withLines(LineWishes others) {
    return new Look(width, counts, annotated, heading, tempo, others, ending, boxes, blank, signs);
  }

  /** The same with another ending. */
  public Look withEnding(Ending other) {
    return new Look(width, counts, annotated, heading, tempo, lines, other, boxes, blank, signs);
  }

  /** The same without or with tempo and swing. */
  public Look withTempo(Tempo shown) {
    return new Look(width, counts, annotated, heading, shown, lines, ending, boxes, blank, signs);
  }

  /** The same with the marks that a section needs under the tempo and feel of the whole page. */
  public Look withTempo(Groove.Setting own, Groove.Setting page) {
    boolean feel = !own.feel().equals(page.feel());
    return withTempo(feel ? Tempo.WITH_FEEL : Tempo.of(!own.tempo().equals(page.tempo())));
  }

  /** The same with its bars left empty to be written on. */
  public Look withBlankBars() {
    return new Look(
        width, counts, annotated, heading, tempo, lines, Ending.FINAL, boxes, true, signs);
  }

  /** The same with boxes in place of the sticking of the hands. */
  public Look withBoxes() {
    return new Look(width, counts, annotated, heading, tempo, lines, ending, true, blank, signs);
  }

  /** The notes alone, as an examiner's copy shows them. */
  public Look clean() {
    return new Look(
        width, false, false, heading, tempo, lines, ending, boxes, blank, ChartSigns.NONE);
  }

  /** The same with what the lesson's charts say of the section. */
  public Look withSigns(ChartSigns said) {
    return new Look(width, counts, annotated, heading, tempo, lines, ending, boxes, blank, said);
  }
}
