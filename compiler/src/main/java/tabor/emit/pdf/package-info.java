/**
 * The printed handout. In: a lesson with its engraved sections; out: pages, then the bytes of a PDF
 * file. The only room that knows PDFBox, but for the reader of the text font.
 */
@org.jspecify.annotations.NullMarked
package tabor.emit.pdf;
