/**
 * Work that is done on several cores at once. In: things and what is to be done with each; out:
 * what came of them, in order, the same as on one core. Knows nothing of what is done.
 */
@org.jspecify.annotations.NullMarked
package tabor.cores;
