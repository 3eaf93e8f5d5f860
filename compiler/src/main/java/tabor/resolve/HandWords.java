package tabor.resolve;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The words of hands that texts have between square brackets; they follow the player. */
public final class HandWords {
  private static final Pattern WORD = Pattern.compile("\\[(right|left|Right|Left)\\]");

  private HandWords() {}

  /** A text for a player; a bracket with anything else stays as it is. */
  public static String of(String text, boolean leftHanded) {
    if (text.indexOf('[') < 0) {
      return text;
    }
    Matcher words = WORD.matcher(text);
    return words.replaceAll(found -> word(found.group(1), leftHanded));
  }

  private static String word(String word, boolean leftHanded) {
    if (!leftHanded) {
      return word;
    }
    return switch (word) {
      case "right" -> "left";
      case "left" -> "right";
      case "Right" -> "Left";
      default -> "Right";
    };
  }
}
