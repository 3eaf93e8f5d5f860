package tabor.ide;

import org.jspecify.annotations.Nullable;
import tabor.source.Span;
import tabor.syntax.Beat;
import tabor.syntax.CountRef;
import tabor.syntax.Line;

/**
 * The smallest thing with a meaning of its own on a line.
 *
 * @param role what it is
 * @param text a name as the tree has it, else as written
 * @param span where, counted from the line's first character
 * @param count the count that it is; null for anything else
 * @param hit the stroke that it is; null for anything else
 */
public record SyntaxToken(
    Role role, String text, Span span, @Nullable CountRef count, Beat.@Nullable Hit hit) {

  /** What a token is. */
  public enum Role {
    /** A word of the language that is none of the below. */
    KEYWORD,
    /** The name of a groove, step, sheet or chart where it is given. */
    SECTION_NAME,
    /** The same where it is used. */
    SECTION,
    PATTERN_NAME,
    PATTERN,
    KIT_NAME,
    KIT,
    /** The name of a player; a player is only named where it is given. */
    PLAYER_NAME,
    PLAYER,
    /** A kit's own surface where it is made. */
    SURFACE_NAME,
    SURFACE,
    /** A limb, {@code hands}, {@code feet}, {@code line} or {@code all}. */
    LIMB,
    /** A letter of a kit where it is given. */
    LETTER_NAME,
    /** A word of a closed list, such as a note value. */
    VALUE,
    /** A word that sets or asks for a level or a loudness. */
    LEVEL,
    NUMBER,
    COUNT,
    TEXT,
    /** The file of a {@code use}. */
    FILE,
    HIT,
    SILENCE,
    HOLD,
    /** {@code |}, {@code :}, {@code %}, brackets and the like. */
    SIGN
  }

  static SyntaxToken of(Role role, String text, Span span) {
    return new SyntaxToken(role, text, span, null, null);
  }

  /** True if a name is given here, not used. */
  public boolean givesName() {
    return switch (role) {
      case SECTION_NAME, PATTERN_NAME, KIT_NAME, PLAYER_NAME, SURFACE_NAME, LETTER_NAME -> true;
      default -> false;
    };
  }

  /** The letter of a stroke without its grace notes, parentheses and suffixes; else all of it. */
  Span letterSpan(Line line) {
    if (hit == null) {
      return span;
    }
    int at = span.start();
    String text = line.passage().text();
    while (at < span.end() - 1 && !Character.isLetter(text.charAt(line.start() + at))) {
      at++;
    }
    return new Span(at, at + 1);
  }
}
