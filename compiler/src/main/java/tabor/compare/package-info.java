/**
 * What changed in the music from one text of a lesson to another. In: two compiled files; out: a
 * list of changes, its words, and reports of it. Must not know files or the command line.
 */
@org.jspecify.annotations.NullMarked
package tabor.compare;
