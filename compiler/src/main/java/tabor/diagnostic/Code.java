package tabor.diagnostic;

import java.util.Locale;
import java.util.Optional;

/** Every kind of diagnostic. The words are stable: tests, pages and editors rely on them. */
public enum Code {
  BAR_LENGTH(Severity.ERROR),
  BAR_COUNT(Severity.ERROR),
  LIMB_CONFLICT(Severity.ERROR),
  THREE_HANDS(Severity.ERROR),
  THREE_FEET(Severity.ERROR),
  NO_FREE_HAND(Severity.ERROR),
  WRONG_LIMB(Severity.ERROR),
  UNKNOWN_NAME(Severity.ERROR),
  UNKNOWN_LETTER(Severity.ERROR),
  DUPLICATE_NAME(Severity.ERROR),
  NOTHING_THERE(Severity.ERROR),
  AMBIGUOUS_COUNT(Severity.ERROR),
  COUNT_OUTSIDE_BAR(Severity.ERROR),
  MISSING_SURFACE(Severity.ERROR),
  ACCENT_IN_GHOST(Severity.ERROR),
  SYNTAX(Severity.ERROR),
  USE_CYCLE(Severity.ERROR),
  USE_OUTSIDE(Severity.ERROR),
  TOO_LONG(Severity.ERROR),
  TOO_DEEP(Severity.ERROR),
  /** A file that is not UTF-8. */
  NOT_UTF8(Severity.ERROR),
  /** A file that cannot be read or written. */
  UNREADABLE(Severity.ERROR),

  HIHAT_CONTRADICTION(Severity.WARNING),
  FOOT_ON_CLOSED_HIHAT(Severity.WARNING),
  TOO_FAST(Severity.WARNING),
  FAR_REACH(Severity.WARNING),
  PATTERN_CUT(Severity.WARNING),
  UNUSED_NAME(Severity.WARNING, true),
  ALL_ACCENTS(Severity.WARNING),
  /** A count that our own reading won, though the lesson counts so elsewhere in the beat. */
  COUNTING_WORD(Severity.WARNING),
  /** What the command line asked for changes who or what is struck. */
  PLAYED_DIFFERENTLY(Severity.WARNING),
  /** MIDI ticks had to be rounded. */
  ROUNDED_TICKS(Severity.WARNING),

  ODD_BEAT(Severity.HINT),
  HELD_DRUM(Severity.HINT),
  ALREADY_THERE(Severity.HINT, true),
  CROSSED_ARMS(Severity.HINT);

  private final Severity severity;
  private final boolean idle;

  Code(Severity severity) {
    this(severity, false);
  }

  Code(Severity severity, boolean idle) {
    this.severity = severity;
    this.idle = idle;
  }

  /** How bad a diagnostic of this code usually is. */
  public Severity severity() {
    return severity;
  }

  /** True if what it stands at could be taken out without a change: editors show it faint. */
  public boolean isIdle() {
    return idle;
  }

  /** {@code bar-length}. */
  public String word() {
    return this == NOT_UTF8 ? "not-utf-8" : name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The code that a word names. */
  public static Optional<Code> of(String word) {
    for (Code code : values()) {
      if (code.word().equals(word)) {
        return Optional.of(code);
      }
    }
    return Optional.empty();
  }
}
