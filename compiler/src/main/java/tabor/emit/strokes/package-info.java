/**
 * The stroke list: every stroke with its exact place, as TSV or JSON. In: grooves and steps; out:
 * text. Knows no other output and touches no file.
 */
@org.jspecify.annotations.NullMarked
package tabor.emit.strokes;
