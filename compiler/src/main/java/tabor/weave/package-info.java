/**
 * Documents with notation in them → the same documents with pictures. In: the text of a document
 * and who finds lessons; out: texts, pictures as bytes, and problems with their lines. Knows
 * CommonMark; must not know the disk, the command line or streams.
 */
@org.jspecify.annotations.NullMarked
package tabor.weave;
