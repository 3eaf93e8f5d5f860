/**
 * From trees to the model: names, settings, kits, parts, patterns, places, edits, charts. In: one
 * section's tree and what it may see; out: the finished section and its diagnostics. A section is a
 * chain of results, each made from the one before: {@code SectionFrame} and {@code SectionLength}
 * (settings and length), {@code SectionDraft} (its strokes after each line, parts and edits), the
 * draft with its open strokes dealt ({@code Dealing}), the checked section ({@code Resolved}). What
 * a place means is read once, by {@code PlaceQuery}. Knows no file and no ANTLR; asks the body for
 * limbs where the source leaves them open.
 */
@org.jspecify.annotations.NullMarked
package tabor.resolve;
