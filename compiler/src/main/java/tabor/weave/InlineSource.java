package tabor.weave;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Makes a small lesson of the words of a staff in a line of text. Words without a heading are what
 * the hands play: {@code RlrrLrll}, a row of strokes, four to a beat; or {@code rlrr lrll}, a beat
 * to a word. With a heading they are parts: {@code snare : ..x. ..x.; kick : x... x...}.
 */
final class InlineSource {
  /** What stands before a colon where a part begins. */
  private static final Pattern HEADING = Pattern.compile("[a-z][a-z0-9 .-]*:(?=\\s|$)");

  private static final int MOST_STROKES = 64;
  private static final int MOST_BEATS = 16;

  private InlineSource() {}

  static String of(String words) throws Trouble {
    String text = words.strip();
    if (text.isEmpty()) {
      throw new Trouble("there is nothing behind tabor:", "Write for instance tabor: RlrrLrll.");
    }
    return HEADING.matcher(text.replaceAll("\\s+:", ":")).lookingAt() ? parts(text) : hands(text);
  }

  private static String parts(String text) throws Trouble {
    List<String> lines = new ArrayList<>();
    int beats = 0;
    for (String part : text.split(";", -1)) {
      String line = part.strip();
      lines.add(line);
      String played = line.substring(line.indexOf(':') + 1).strip();
      beats = Math.max(beats, beats(played.split("\\|", -1)[0].strip()));
    }
    return groove(beats, lines);
  }

  private static String hands(String text) throws Trouble {
    if (text.chars().anyMatch(Character::isWhitespace) || !isRow(text)) {
      return groove(beats(text.split("\\|", -1)[0].strip()), List.of("hands : " + text));
    }
    int strokes = text.length();
    if (strokes > MOST_STROKES) {
      throw new Trouble(
          "this is too long for a staff in a line of text", "Write it as a block of its own.");
    }
    // Four to a beat where that comes out even, else an eighth each.
    boolean sixteenths = strokes % 4 == 0;
    String time = sixteenths ? strokes / 4 + "/4" : strokes + "/8";
    return "time "
        + time
        + "\npattern row : "
        + text
        + "\ngroove staff\n  hands play row in "
        + (sixteenths ? "sixteenths" : "eighths")
        + "\n";
  }

  /** True for letters and rests alone, one for each place. */
  private static boolean isRow(String text) {
    return text.chars().allMatch(c -> "rlRLxXbB.".indexOf(c) >= 0);
  }

  private static String groove(int beats, List<String> parts) {
    return "time " + beats + "/4\ngroove staff\n  " + String.join("\n  ", parts) + "\n";
  }

  /** How many beats the words of a bar take, a word that spreads counted as it says. */
  private static int beats(String bar) throws Trouble {
    int beats = 0;
    for (String word : bar.split("\\s+", -1)) {
      int colon = word.lastIndexOf(':');
      String spread = colon < 0 ? "" : word.substring(colon + 1);
      beats += spread.matches("[1-9]") ? Integer.parseInt(spread) : 1;
    }
    if (beats > MOST_BEATS) {
      throw new Trouble(
          "this is too long for a staff in a line of text", "Write it as a block of its own.");
    }
    return beats;
  }
}
