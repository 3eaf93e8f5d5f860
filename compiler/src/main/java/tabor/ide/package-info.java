/**
 * What an editor asks of a compiled file: what stands at an offset, what could stand there, where a
 * name is used, how to mend or recast a line. Offsets of the file in, plain values out; knows no
 * protocol and no file system.
 */
@org.jspecify.annotations.NullMarked
package tabor.ide;
