/**
 * Exact musical time: fractions of a whole note, meters, beats, divisions, counts, tempo and feel.
 * Knows no limb, no surface and no source text. There is no floating point in this room.
 */
@org.jspecify.annotations.NullMarked
package tabor.rhythm;
