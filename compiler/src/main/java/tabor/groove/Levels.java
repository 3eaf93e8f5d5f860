package tabor.groove;

/**
 * MIDI velocities of the three levels, 1 to 127, at {@code mf}.
 *
 * @param ghost of ghost and grace notes
 * @param plain of plain strokes
 * @param accent of accents
 */
public record Levels(int ghost, int plain, int accent) {
  /** 35, 78 and 115. */
  public static final Levels DEFAULT = new Levels(35, 78, 115);

  /** Throws {@link IllegalArgumentException} for a velocity out of range. */
  public Levels {
    for (int velocity : new int[] {ghost, plain, accent}) {
      if (velocity < 1 || velocity > 127) {
        throw new IllegalArgumentException("velocity " + velocity);
      }
    }
  }

  /** The velocity of a level. */
  public int of(Level level) {
    return switch (level) {
      case GHOST -> ghost;
      case PLAIN -> plain;
      case ACCENT -> accent;
    };
  }
}
