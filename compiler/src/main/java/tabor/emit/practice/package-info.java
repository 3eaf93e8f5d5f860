/**
 * A teacher's overviews as plain text: what each step of a lesson asks for, and how fast a section
 * could go. In: a lesson; out: lines. Knows no other output.
 */
@org.jspecify.annotations.NullMarked
package tabor.emit.practice;
