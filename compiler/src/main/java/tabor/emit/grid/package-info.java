/**
 * The counted grid: plain text, aligned in any monospaced font, at most 100 columns. In: finished
 * sections; out: bars laid out in columns, then text. Its signs are those of the notation. Knows no
 * other output and no file.
 */
@org.jspecify.annotations.NullMarked
package tabor.emit.grid;
