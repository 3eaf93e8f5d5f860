/**
 * MusicXML 4.0: a lesson as one part of a partwise score. In: a lesson, spelled by {@link
 * tabor.notation.Speller}; out: a {@link tabor.emit.musicxml.ScoreFile}, and its text. Knows no
 * other output and touches no file.
 *
 * <p>Source of the format: MusicXML 4.0, W3C Music Notation Community Group, Final Community Group
 * Report, June 2021: the schema and its documentation.
 */
@org.jspecify.annotations.NullMarked
package tabor.emit.musicxml;
