package tabor.emit.engrave;

/**
 * What is drawn of a section, and how wide.
 *
 * @param width width of a system in staff spaces, 30 or more
 * @param counts the count above the notes, where the section shows it
 * @param sticking the sticking below, where the section shows it
 * @param changes strokes that a step changed are marked
 * @param heading the section's title stands above its first system
 * @param tempo tempo and swing stand above the first system
 */
public record Look(
    double width,
    boolean counts,
    boolean sticking,
    boolean changes,
    boolean heading,
    boolean tempo) {
  /** Everything, 100 staff spaces wide: the width of a printed page at a staff of 7 mm. */
  public static final Look FULL = new Look(100, true, true, true, false, true);

  /** Throws {@link IllegalArgumentException} for a width that no bar can be drawn in. */
  public Look {
    if (!(width >= 30)) {
      throw new IllegalArgumentException("width " + width);
    }
  }

  /** The same with the section's title above it: for a picture that stands alone. */
  public Look withHeading() {
    return new Look(width, counts, sticking, changes, true, tempo);
  }

  /** The same at another width. */
  public Look withWidth(double other) {
    return new Look(other, counts, sticking, changes, heading, tempo);
  }

  /** The notes alone, as an examiner's copy shows them. */
  public Look clean() {
    return new Look(width, false, false, false, heading, tempo);
  }
}
