/** Drawings as PNG pictures. In: a drawing; out: bytes. Lays out nothing. */
@org.jspecify.annotations.NullMarked
package tabor.emit.png;
