/**
 * The text font: measures and outlines of lines of text. In: the font file of the PDFBox artifact;
 * out: widths and shapes. Knows no note and no page.
 */
@org.jspecify.annotations.NullMarked
package tabor.emit.font;
