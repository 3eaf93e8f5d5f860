package tabor.syntax;

import tabor.source.Span;

/**
 * A name or keyword.
 *
 * @param text as written; limbs with one space and without {@code hand}: {@code right}, {@code left
 *     foot}
 * @param span where
 */
public record Word(String text, Span span) {}
