package tabor.groove;

import java.util.Locale;

/** What is done to a stroke beside striking it, in the order of every list. */
public enum Ornament {
  FLAM,
  DRAG,
  RUFF,
  DIDDLE,
  OPEN_ROLL,
  BUZZ,
  CHOKE,
  RIMSHOT;

  /** {@code open-roll}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** How many small strokes come before the main stroke: 1, 2, 3, or 0. */
  public int smallStrokes() {
    return this == FLAM ? 1 : this == DRAG ? 2 : this == RUFF ? 3 : 0;
  }

  /** True for the ornaments that replace each other with {@code other}. */
  public boolean excludes(Ornament other) {
    return (smallStrokes() > 0 && other.smallStrokes() > 0) || (isRoll() && other.isRoll());
  }

  /** True for diddle, open roll and buzz: what fills the slot. */
  public boolean isRoll() {
    return this == DIDDLE || this == OPEN_ROLL || this == BUZZ;
  }
}
