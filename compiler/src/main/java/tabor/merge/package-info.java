/**
 * Three texts of a lesson to one: what two people changed, statement by statement. In: texts; out:
 * a text, the conflicts in it, and why. Must not know files, git or the command line.
 */
@org.jspecify.annotations.NullMarked
package tabor.merge;
