/** Drawings as SVG. In: a drawing; out: text. Lays out nothing. */
@org.jspecify.annotations.NullMarked
package tabor.emit.svg;
