package tabor.ide;

import org.jspecify.annotations.Nullable;
import tabor.rhythm.Count;
import tabor.source.Span;
import tabor.syntax.Beat;

/**
 * The smallest thing with a meaning of its own on a line.
 *
 * @param role what it is
 * @param text a name as the tree has it, else as written
 * @param span where, counted from the line's first character
 * @param count the count that it is; null for anything else
 * @param hit the stroke that it is; null for anything else
 */
public record Leaf(
    Role role, String text, Span span, @Nullable Count count, Beat.@Nullable Hit hit) {

  /** What a leaf is. */
  public enum Role {
    /** A word of the language: what the tree does not keep, and words of closed lists. */
    KEYWORD,
    /** The name of a groove, step or chart where it is given. */
    SECTION_NAME,
    /** The same where it is used. */
    SECTION,
    PATTERN_NAME,
    PATTERN,
    KIT_NAME,
    KIT,
    /** A kit's own surface where it is made. */
    SURFACE_NAME,
    SURFACE,
    /** A limb, {@code hands}, {@code feet}, {@code line} or {@code all}. */
    LIMB,
    /** A letter of a kit where it is given. */
    LETTER_NAME,
    /** A note value. */
    VALUE,
    /** A word that sets or asks for a level. */
    LEVEL,
    NUMBER,
    COUNT,
    TEXT,
    /** The file of a {@code use}. */
    FILE,
    HIT,
    REST,
    HOLD,
    /** {@code |}, {@code :}, {@code %}, brackets and the like. */
    SIGN,
    COMMENT
  }

  static Leaf of(Role role, String text, Span span) {
    return new Leaf(role, text, span, null, null);
  }

  /** True if a name is given here, not used. */
  public boolean isName() {
    return switch (role) {
      case SECTION_NAME, PATTERN_NAME, KIT_NAME, SURFACE_NAME, LETTER_NAME -> true;
      default -> false;
    };
  }
}
