/**
 * How a section is written on a staff: voices, note values, rests, tuplets and beams, shared by
 * every output that shows notes. In: a groove; out: a {@link tabor.notation.Score}. Knows no
 * format, no font and no page.
 */
@org.jspecify.annotations.NullMarked
package tabor.notation;
