/**
 * From the model to sounding events: swing, velocities, grace notes, rolls, cut-off cymbals,
 * clicks, and charts played out in time. In: a groove, a step or a chart; out: a {@link
 * tabor.perform.Performance}. What MIDI, the practice page and the stroke list share. Knows no file
 * format and no source text.
 */
@org.jspecify.annotations.NullMarked
package tabor.perform;
