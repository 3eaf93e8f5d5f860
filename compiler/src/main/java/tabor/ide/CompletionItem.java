package tabor.ide;

import tabor.source.Span;

/**
 * A word that could stand at the cursor.
 *
 * @param label as shown
 * @param text what is written
 * @param kind what it is
 * @param detail a few words beside it, perhaps none
 * @param documentation a sentence or two on it, perhaps none
 * @param replaced what it takes the place of in the file: the word that it completes, or the bare
 *     place of the cursor where no word is begun
 */
public record CompletionItem(
    String label, String text, Kind kind, String detail, String documentation, Span replaced) {
  /** What is offered. */
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
