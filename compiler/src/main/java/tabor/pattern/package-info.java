/**
 * Rudiments and timelines as tables, and Euclidean patterns: what can be played without being
 * written first. Knows no kit and no source text.
 */
@org.jspecify.annotations.NullMarked
package tabor.pattern;
