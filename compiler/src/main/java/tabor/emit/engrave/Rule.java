package tabor.emit.engrave;

/**
 * The measures of the page, in staff spaces. Thicknesses are in the range that SMuFL 1.4 names as
 * engraving defaults; distances are our own choice, made by looking.
 */
final class Rule {
  private Rule() {}

  static final double STAFF_LINE = 0.12;
  static final double LEDGER_LINE = 0.16;

  /** How far a ledger line reaches beyond its head on each side. */
  static final double LEDGER_REACH = 0.35;

  static final double STEM = 0.13;
  static final double BEAM = 0.5;

  /** From one beam's middle to the next one's. */
  static final double BEAM_STEP = 0.75;

  /** Length of a beam that belongs to one note alone. */
  static final double HOOK = 1.1;

  static final double THIN_BAR = 0.16;
  static final double THICK_BAR = 0.5;
  static final double BAR_GAP = 0.4;
  static final double HAIRPIN = 0.15;
  static final double BRACKET = 0.13;

  /** Width of a filled round head: what every column is measured by. */
  static final double HEAD = Sign.of("noteheadBlack").box().width();

  /** Length of a stem with no more than two flags. */
  static final double STEM_LENGTH = 3.5;

  /** Size of small notes. */
  static final double SMALL = 0.64;

  static final double COUNT_SIZE = 1.45;
  static final double STICKING_SIZE = 1.45;
  static final double NUMBER_SIZE = 1.25;
  static final double TEMPO_SIZE = 1.7;
  static final double HEADING_SIZE = 2.3;

  /** A title or a tempo mark may be so wide over a narrower section before it takes a new line. */
  static final double WORDS_WIDTH = 34;

  /** The height of a place of the staff: line 5 is 0, line 1 is 4. */
  static double y(int halfSpaces) {
    return 4 - halfSpaces / 2.0;
  }
}
