/**
 * The page that plays: one self-contained HTML file for a lesson. In: the finished lesson, and for
 * each section the text of its engraving as SVG, which the caller supplies; out: a {@link
 * tabor.emit.html.Page}, and its text. Knows no other output, no file and no source text.
 */
@org.jspecify.annotations.NullMarked
package tabor.emit.html;
