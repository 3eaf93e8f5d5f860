/**
 * From trees to the model: names, settings, kits, parts, patterns, edits, charts. In: one section's
 * tree and what it may see; out: the finished section and its diagnostics. Knows no file and no
 * ANTLR; asks the body for limbs where the source leaves them open.
 */
@org.jspecify.annotations.NullMarked
package tabor.resolve;
