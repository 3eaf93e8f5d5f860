package tabor.syntax;

import tabor.rhythm.Time;
import tabor.source.Span;

/**
 * A number.
 *
 * @param value exact; numbers of more than nine digits are read as 999999999, which is out of every
 *     range
 * @param span where
 */
public record Num(Time value, Span span) {
  /** The value as a whole number; 0 if it is not whole. */
  public int whole() {
    return value.isWhole() ? (int) value.num() : 0;
  }
}
