/**
 * The fixed words of printed outputs in every language that there is: resource bundles, and the
 * names of surfaces, limbs and note values in them. In: a key and what goes into its pattern; out:
 * a phrase. Nothing is glued: word order and plural forms are the pattern's. Knows no section, no
 * output; messages at the command line and diagnostics are English and not here.
 */
@org.jspecify.annotations.NullMarked
package tabor.words;
