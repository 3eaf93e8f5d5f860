/**
 * From a lesson to the files it becomes: which forms there are, what their files are called, and
 * who writes their bytes. In: a finished lesson; out: names and bytes. Knows no disk; whoever calls
 * it puts the bytes there.
 */
@org.jspecify.annotations.NullMarked
package tabor.build;
