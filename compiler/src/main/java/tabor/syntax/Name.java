package tabor.syntax;

import tabor.source.Span;

/**
 * A name as written: of a section, a pattern, a kit or a set of limits.
 *
 * @param text the name
 * @param span where
 */
public record Name(String text, Span span) {}
