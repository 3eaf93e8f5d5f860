/**
 * Tree to canonical text. Input: the text of a file, or a statement. Output: the same said in the
 * one way that Tabor writes it. Knows the tree as written and nothing of what it means.
 */
@org.jspecify.annotations.NullMarked
package tabor.format;
