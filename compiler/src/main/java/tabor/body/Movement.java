package tabor.body;

import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.rhythm.Time;

/**
 * One movement of one limb: a stroke, a diddle (two strokes of one arm movement), or the grace
 * notes that a limb makes before another's stroke.
 *
 * @param stroke the stroke that it belongs to
 * @param limb who moves
 * @param start where its first hit is written, from the start of the section in whole notes
 * @param lead how many grace notes before that its first hit sounds
 * @param last where its last hit is written
 * @param lastLead how many grace notes before that its last hit sounds
 * @param inner time between its measured hits in whole notes; zero for a single hit and for grace
 *     notes, which nobody measures
 */
record Movement(
    Stroke stroke, Limb limb, Time start, int lead, Time last, int lastLead, Time inner) {}
