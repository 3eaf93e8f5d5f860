package tabor.syntax;

import tabor.rhythm.Count;
import tabor.source.Span;

/**
 * A count, such as {@code 3&.2/4}, in its parts.
 *
 * @param count the parts
 * @param span where
 */
public record CountRef(Count count, Span span) {}
