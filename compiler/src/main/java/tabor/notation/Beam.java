package tabor.notation;

/** What one beam does at one chord. */
public enum Beam {
  BEGIN,
  CONTINUE,
  END,
  /** A short beam to the right. */
  FORWARD_HOOK,
  /** A short beam to the left. */
  BACKWARD_HOOK
}
