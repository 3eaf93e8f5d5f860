/**
 * The practice page: one self-contained HTML file for a lesson. In: the finished lesson, and for
 * each section its drawings, which the caller supplies; out: a {@link tabor.emit.html.Page}, and
 * its text. Knows no other output, no file and no source text.
 */
@org.jspecify.annotations.NullMarked
package tabor.emit.html;
