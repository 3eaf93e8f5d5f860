/**
 * The typed model: strokes, levels, ornaments, grooves and steps, charts, lessons, and what a step
 * changed. Knows how none of it was written, but for the spot each stroke came from.
 */
@org.jspecify.annotations.NullMarked
package tabor.groove;
