/**
 * The tree as written: one record for each kind of line and each thing in it. Spans count from the
 * first character of the line, so that equal lines can share one tree.
 */
@org.jspecify.annotations.NullMarked
package tabor.syntax;
