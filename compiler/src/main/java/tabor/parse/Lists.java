package tabor.parse;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.antlr.v4.runtime.Vocabulary;
import tabor.grammar.TaborLexer;
import tabor.kit.Surface;
import tabor.rhythm.NoteValue;

/** The words that the notation knows, list by list. */
final class Lists {
  static final List<String> LEVELS = List.of("ghosted", "plain", "accented");
  static final List<String> LEVEL_NAMES = List.of("ghost", "plain", "accent");
  static final List<String> DYNAMICS = List.of("pp", "p", "mp", "mf", "f", "ff");
  static final List<String> HEADS =
      Arrays.stream(Surface.Head.values()).map(Surface.Head::word).toList();
  static final List<String> CLICKS = List.of("on", "off", "quarters", "eighths");
  static final List<String> LIMITS = List.of("hands", "feet", "doubles", "reach");
  static final List<String> SHOWN = List.of("counts", "sticking", "none");
  static final List<String> FEELS = List.of("straight", "swing");
  static final List<String> SWUNG = List.of("eighths", "sixteenths");
  static final List<String> DIRECTIONS = List.of("later", "earlier");
  static final List<String> SYLLABLES = List.of("e", "a");

  /** Words that join the parts of a statement. */
  static final List<String> JOINING =
      List.of(
          "at",
          "in",
          "where",
          "with",
          "from",
          "to",
          "by",
          "play",
          "plays",
          "follows",
          "between",
          "and",
          "like",
          "letter",
          "key",
          "staff",
          "head",
          "every",
          "left-lead");

  static final List<String> TEMPO_VALUES =
      List.of(
          "half",
          "quarter",
          "eighth",
          "sixteenth",
          "dotted-half",
          "dotted-quarter",
          "dotted-eighth",
          "dotted-sixteenth");
  static final List<String> VALUES =
      Arrays.stream(NoteValue.values()).map(NoteValue::word).toList();
  static final List<String> VALUES_BOTH = values();

  /** Every word with a place in the grammar. */
  static final Set<String> KEYWORDS = keywords();

  private Lists() {}

  private static List<String> values() {
    List<String> all = new ArrayList<>(VALUES);
    for (NoteValue value : NoteValue.values()) {
      all.add(value.singular());
    }
    return List.copyOf(all);
  }

  private static Set<String> keywords() {
    Set<String> words = new java.util.TreeSet<>();
    Vocabulary vocabulary = TaborLexer.VOCABULARY;
    for (int type = 1; type <= vocabulary.getMaxTokenType(); type++) {
      String literal = vocabulary.getLiteralName(type);
      if (literal != null && literal.matches("'[a-z-]{2,}'")) {
        words.add(literal.substring(1, literal.length() - 1));
      }
    }
    return Set.copyOf(words);
  }

  /** True for a word that the language uses, which a surface may not be called. */
  static boolean isTaken(String word) {
    return KEYWORDS.contains(word)
        || VALUES_BOTH.contains(word)
        || LEVELS.contains(word)
        || DYNAMICS.contains(word)
        || TEMPO_VALUES.contains(word)
        || DIRECTIONS.contains(word)
        || FEELS.contains(word)
        || SHOWN.contains(word)
        || word.equals("doubles")
        || word.equals("reach")
        || word.equals("off")
        || word.equals("triplets");
  }
}
