/**
 * Diagnostics for people and for machines: text for a terminal, JSON, SARIF. In: compiled files;
 * out: text. Knows no stream and no file.
 */
@org.jspecify.annotations.NullMarked
package tabor.report;
