package tabor.resolve;

import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.source.Span;
import tabor.source.Spot;
import tabor.syntax.Subject;

/**
 * A word of a language where beats are written: told once as a word, and not letter by letter.
 *
 * @param spot all its letters
 */
record UnreadWord(Spot spot) {
  /** Shorter ones may well be beats, longer ones are no words. */
  private static final int SHORTEST = 4;

  private static final int LONGEST = 20;

  /** A word has at least so many different letters that no part but a limb's knows. */
  private static final int FOREIGN = 3;

  private static final String KNOWN = "rlbxkpo";

  /** What people write for a bar that is the same once more. */
  private static final Set<String> AGAIN =
      Set.of("repeat", "repeats", "same", "again", "ditto", "simile", "idem");

  /** The word around a letter; null if the letter stands in no word. */
  static @Nullable UnreadWord around(Spot letter) {
    String text = letter.passage().text();
    int from = letter.span().start();
    int to = letter.span().end();
    while (from > 0 && isLetter(text.charAt(from - 1)) && to - from <= LONGEST) {
      from--;
    }
    while (to < text.length() && isLetter(text.charAt(to)) && to - from <= LONGEST) {
      to++;
    }
    String word = text.substring(from, to);
    long foreign =
        word.toLowerCase(Locale.ROOT).chars().filter(c -> KNOWN.indexOf(c) < 0).distinct().count();
    return word.length() < SHORTEST || word.length() > LONGEST || foreign < FOREIGN
        ? null
        : new UnreadWord(new Spot(letter.passage(), new Span(from, to)));
  }

  private static boolean isLetter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
  }

  /**
   * What is said of it.
   *
   * @param help which letters the part knows
   */
  Diagnostic told(Subject subject, String help) {
    Diagnostic problem =
        Diagnostic.of(
            Code.UNKNOWN_LETTER,
            spot,
            "“" + spot.text() + "” is no beat of the part “" + subject.words() + "”");
    if (!AGAIN.contains(spot.text().toLowerCase(Locale.ROOT))) {
      return problem.help(help);
    }
    Diagnostic again = problem.help("a bar that is the same as the one before it is written %");
    return isAlone() ? again.fix("write %", spot, "%") : again;
  }

  /** True if it is all that its bar has, and not the first. */
  private boolean isAlone() {
    String text = spot.passage().text();
    int before = spot.span().start() - 1;
    while (before >= 0 && text.charAt(before) == ' ') {
      before--;
    }
    int after = spot.span().end();
    while (after < text.length() && text.charAt(after) == ' ') {
      after++;
    }
    return before >= 0
        && text.charAt(before) == '|'
        && (after == text.length() || "|\r\n#".indexOf(text.charAt(after)) >= 0);
  }
}
