/**
 * Sound as samples: the same synthesis that the practice page does in the browser, for sound files
 * and for {@code tabor play}. In: a performance; out: samples, or the bytes of a WAV file. Knows no
 * other output, no device and no file.
 */
@org.jspecify.annotations.NullMarked
package tabor.audio;
