/**
 * Source text, half-open spans in UTF-16 offsets and the line index; texts that come with the
 * program. Knows nothing else of Tabor.
 */
@org.jspecify.annotations.NullMarked
package tabor.source;
