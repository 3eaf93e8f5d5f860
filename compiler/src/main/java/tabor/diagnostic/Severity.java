package tabor.diagnostic;

import java.util.Locale;

/** How bad it is. */
public enum Severity {
  /** Nothing is built. */
  ERROR,
  /** Built, but look. */
  WARNING,
  /** Shown in the editor and on request. */
  HINT;

  /** {@code error}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
