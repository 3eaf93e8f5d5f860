/**
 * The engraver. In: a {@link tabor.notation.Score} and a {@link tabor.emit.engrave.Look}; out: an
 * {@link tabor.emit.engrave.Engraving}, whose drawings are filled shapes and words in staff spaces.
 * Knows no file format: writers turn drawings into SVG, PNG and PDF.
 */
@org.jspecify.annotations.NullMarked
package tabor.emit.engrave;
