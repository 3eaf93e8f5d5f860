/**
 * What an editor asks of a compiled file: what stands at an offset, what could stand there, where a
 * name is used, how to fix a line or write it otherwise. Offsets of the file in, plain values out;
 * knows no protocol and no file system. What a word means is read off the typed tree, what may
 * follow off the grammar, what a statement does off the table of statements.
 */
@org.jspecify.annotations.NullMarked
package tabor.ide;
