package tabor.emit.engrave;

/** The cuts of the text face. */
public enum Face {
  /** Running text, counts, stickings. */
  REGULAR,
  /** Titles and numbers of steps. */
  BOLD,
  /** What changed, and notes about the page. */
  ITALIC
}
