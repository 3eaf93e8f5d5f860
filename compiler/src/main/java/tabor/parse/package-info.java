/**
 * The only room that knows ANTLR. Input: the text of a file. Output: its passages, and for each the
 * tree of its lines with what could not be read, as diagnostics. Never throws on any text. Knows
 * nothing of kits in force, of sections elsewhere or of bars that add up.
 */
@org.jspecify.annotations.NullMarked
package tabor.parse;
