/**
 * Rudiments and timelines as tables, and evenly spread strokes: what can be played without being
 * written first. Knows no kit and no source text.
 */
@org.jspecify.annotations.NullMarked
package tabor.pattern;
