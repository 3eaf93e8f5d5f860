/**
 * The command line: the only room of the compiler with files, streams and exit codes. In: words
 * from the terminal; out: files, reports and an exit code. Knows no rule of the notation.
 */
@org.jspecify.annotations.NullMarked
package tabor.cli;
