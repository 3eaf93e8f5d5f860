package tabor.syntax;

import tabor.source.Span;

/**
 * A word of a closed list, as what it means, and where it is written.
 *
 * @param value what it means
 * @param span where
 * @param <T> the list
 */
public record Ref<T>(T value, Span span) {}
