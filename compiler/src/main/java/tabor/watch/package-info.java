/**
 * A folder served on this machine alone, with live reload: notices what changed on disk, serves
 * bytes, tells open pages to load again. Must not know lessons or documents.
 */
@org.jspecify.annotations.NullMarked
package tabor.watch;
