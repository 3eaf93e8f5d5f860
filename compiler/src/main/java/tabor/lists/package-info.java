/**
 * Looking through lists at no cost for the start of a process. In: collections and conditions; out:
 * answers and new lists. Knows nothing of what the lists hold.
 */
@org.jspecify.annotations.NullMarked
package tabor.lists;
