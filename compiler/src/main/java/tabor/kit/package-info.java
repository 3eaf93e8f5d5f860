/**
 * Limbs, surfaces and kits: who strikes, what is struck, and how it is sounded and written. Knows
 * no stroke and no source text.
 */
@org.jspecify.annotations.NullMarked
package tabor.kit;
