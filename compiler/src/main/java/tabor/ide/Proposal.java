package tabor.ide;

import tabor.source.Span;

/**
 * A word that could stand at the cursor.
 *
 * @param label as shown and inserted
 * @param kind what it is
 * @param detail a few words beside it
 * @param replace what it takes the place of, in the file
 */
public record Proposal(String label, Kind kind, String detail, Span replace) {
  /** What is proposed. */
  public enum Kind {
    KEYWORD,
    LIMB,
    SURFACE,
    LETTER,
    SECTION,
    PATTERN,
    KIT,
    COUNT,
    VALUE,
    FILE
  }
}
