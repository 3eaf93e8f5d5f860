/**
 * Standard MIDI files, format 1: a conductor track, one track for each limb, one for the click. In:
 * performances; out: a {@link tabor.emit.midi.Smf}, and its bytes by {@code javax.sound.midi}.
 * Knows no other output and touches no file.
 *
 * <p>Source of the format: "Standard MIDI Files 1.0", RP-001, revised February 1996; percussion on
 * channel 10: "General MIDI System Level 1", MMA 0007 / RP-003.
 */
@org.jspecify.annotations.NullMarked
package tabor.emit.midi;
