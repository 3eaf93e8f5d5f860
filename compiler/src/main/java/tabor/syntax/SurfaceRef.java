package tabor.syntax;

import tabor.source.Span;

/**
 * A surface or a piece as written; whether the kit has it is not known here.
 *
 * @param name {@code piece} or {@code piece.zone}
 * @param span where
 */
public record SurfaceRef(String name, Span span) {}
