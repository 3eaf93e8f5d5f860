/**
 * The player: where things stand and what arms and legs can reach. Deals open strokes to limbs and
 * checks a finished section. In: strokes and kits; out: limbs and diagnostics. Knows no source
 * text.
 */
@org.jspecify.annotations.NullMarked
package tabor.body;
