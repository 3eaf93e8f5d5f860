package tabor.syntax;

import tabor.rhythm.Count;
import tabor.source.Span;

/** A count and where it is written. */
public record CountWord(Count count, Span span) {}
