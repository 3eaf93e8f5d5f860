package tabor.groove;

import java.util.Locale;

/** How loud a stroke is within its section, softest first. */
public enum Level {
  GHOST,
  PLAIN,
  ACCENT;

  /** {@code ghost}, {@code plain} or {@code accent}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
