/**
 * Many lessons at once: which sections have something, how far two patterns are from each other,
 * which techniques a lesson uses and where each comes first. In: finished lessons and what somebody
 * looks for; out: values. Knows no files, no source text and no output.
 */
@org.jspecify.annotations.NullMarked
package tabor.find;
