package tabor.syntax;

import tabor.source.Span;

/**
 * A quoted text.
 *
 * @param value what it says: quotes taken off, common indentation of a triple text removed
 * @param triple true if it stands in triple quotes
 * @param span where, quotes included
 */
public record Text(String value, boolean triple, Span span) {}
