/**
 * What the pieces of a kit sound like, as figures: the one table from which the practice page and
 * the sound files make their sounds. In: a sound of a performance; out: the name and the layers of
 * its timbre. Makes no samples and knows no output.
 */
@org.jspecify.annotations.NullMarked
package tabor.timbre;
