/**
 * Diagnostics as facts: code, severity, place, second places, message, help and fixes. Knows no
 * statement and no stroke.
 */
@org.jspecify.annotations.NullMarked
package tabor.diagnostic;
