package tabor.parse;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.lists.Lists;
import tabor.parse.LineSimulation.Expectation;
import tabor.syntax.StatementRow;

/**
 * What stands on a line, and what could, in our own names for things, never those of the grammar.
 */
final class Wording {
  private static final int MOST = 6;
  private static final int LONGEST = 30;

  private static final String SAID = "a word that the lesson is counted with";

  private static final Map<Integer, String> RULES =
      Map.ofEntries(
          Map.entry(TaborParser.RULE_newName, "a name"),
          Map.entry(TaborParser.RULE_sectionName, "the name of a section"),
          Map.entry(TaborParser.RULE_patternName, "the name of a pattern"),
          Map.entry(TaborParser.RULE_kitName, "the name of a kit"),
          Map.entry(TaborParser.RULE_furtherName, "the name of a section"),
          Map.entry(TaborParser.RULE_syllable, "a syllable"),
          Map.entry(TaborParser.RULE_saidWord, SAID),
          Map.entry(TaborParser.RULE_surface, "a surface such as snare"),
          Map.entry(TaborParser.RULE_letter, "a letter"),
          Map.entry(TaborParser.RULE_limb, "a limb: right, left, right foot or left foot"),
          Map.entry(
              TaborParser.RULE_targets, "a limb, hands, feet, all or a surface such as snare"),
          Map.entry(TaborParser.RULE_target, "a limb, hands, feet, all or a surface such as snare"),
          Map.entry(
              TaborParser.RULE_subject, "a limb, hands, feet, line or a surface such as snare"),
          Map.entry(TaborParser.RULE_count, "a count such as 2&"),
          Map.entry(TaborParser.RULE_text, "a text in quotes"),
          Map.entry(TaborParser.RULE_number, "a number"),
          Map.entry(TaborParser.RULE_level, "ghosted, plain or accented"),
          Map.entry(TaborParser.RULE_addedLevel, "ghosted or accented"),
          Map.entry(TaborParser.RULE_loudness, "a dynamic mark: pp, p, mp, mf, f or ff"),
          Map.entry(TaborParser.RULE_noteValue, "a note value such as eighths"),
          Map.entry(TaborParser.RULE_distance, "a note value such as eighths, beats or bars"),
          Map.entry(TaborParser.RULE_meter, "a meter such as 4/4"),
          Map.entry(TaborParser.RULE_tempo, "a tempo such as 92"),
          Map.entry(TaborParser.RULE_velocity, "a level with its number, such as ghost 35"),
          Map.entry(TaborParser.RULE_limit, "a limit such as hands 6 to 9"),
          Map.entry(TaborParser.RULE_playedPattern, "a pattern"),
          Map.entry(TaborParser.RULE_barList, "bars such as bar 2"));

  private static final Map<Integer, String> TOKENS =
      Map.ofEntries(
          Map.entry(TaborLexer.NAME, "a word"),
          Map.entry(TaborLexer.WHOLE, "a number"),
          Map.entry(TaborLexer.RATIO, "a meter such as 4/4"),
          Map.entry(TaborLexer.SUM, "a sum such as 2+2+3"),
          Map.entry(TaborLexer.PERCENT, "a share such as 62%"),
          Map.entry(TaborLexer.ORDINAL, "a number such as 4th"),
          Map.entry(TaborLexer.SLOT, "a slot such as .3"),
          Map.entry(TaborLexer.AMPERSAND, "`&`"),
          Map.entry(TaborLexer.COMMA, "a comma"),
          Map.entry(TaborLexer.BAR_LINE, "a bar line"),
          Map.entry(TaborLexer.EQUALS, "an equals sign"),
          Map.entry(TaborLexer.LANE_START, "a colon"));

  /** Left out where there is more to say: these are seldom what is missing. */
  private static final Set<String> SELDOM = Set.of("`hand`", "`foot`", "a comma", SAID);

  /** A longer usage is more than a person reads in a message. */
  private static final int LONGEST_USAGE = 60;

  private Wording() {}

  /** The same with a capital. */
  static String sentence(String words) {
    return words.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + words.substring(1);
  }

  /** {@code a}, {@code a or b}, {@code a, b or c}. */
  static String or(List<String> items) {
    int last = items.size() - 1;
    return last <= 0
        ? String.join("", items)
        : String.join(", ", items.subList(0, last)) + " or " + items.get(last);
  }

  /** What could have stood there; null if it cannot be said in a few words. */
  static @Nullable String expected(Collection<Expectation> expected) {
    Set<String> words = new LinkedHashSet<>();
    boolean mayEnd = false;
    for (Expectation expectation : expected) {
      String ofRule = ofRules(expectation.starting());
      if (ofRule != null) {
        words.add(ofRule);
        continue;
      }
      for (int type : expectation.types().toList()) {
        if (type == Token.EOF) {
          mayEnd = true;
        } else {
          words.add(ofType(type));
        }
      }
    }
    if (!SELDOM.containsAll(words)) {
      words.removeAll(SELDOM);
    }
    if (words.contains("`plays`")) {
      words.remove("`play`");
    }
    if (mayEnd) {
      words.add("the end of the line");
    }
    return words.isEmpty() || words.size() > MOST ? null : or(briefly(words));
  }

  /** In a list, what a word stands for is said without its own list. */
  private static List<String> briefly(Set<String> words) {
    return Lists.map(words, w -> words.size() > 1 ? w.replaceFirst(":.*", "") : w);
  }

  /** The outermost rule that has a name of its own says most. */
  private static @Nullable String ofRules(List<Integer> rules) {
    for (int rule : rules) {
      String words = RULES.get(rule);
      if (words != null) {
        return words;
      }
    }
    return null;
  }

  private static String ofType(int type) {
    String words = TOKENS.get(type);
    if (words == null) {
      String literal = Vocabulary.literal(type);
      words = literal == null ? "something else" : "`" + literal + "`";
    }
    return words;
  }

  /** A token as it is spoken of. */
  static String shown(Token token) {
    return switch (token.getType()) {
      case TaborLexer.LANE_START -> "the colon";
      case TaborLexer.QUOTED, TaborLexer.TRIPLE_QUOTED -> "a text";
      case TaborLexer.COMMA -> "a comma";
      case Token.EOF -> "the end of the line";
      default -> "`" + shortened(token.getText().strip()) + "`";
    };
  }

  private static String shortened(String text) {
    int length = text.codePointCount(0, text.length());
    return length <= LONGEST ? text : text.substring(0, text.offsetByCodePoints(0, LONGEST)) + "…";
  }

  /** The usage of one statement, or an example of each of several; null for none. */
  static @Nullable String usage(List<StatementRow> rows) {
    return rows.isEmpty()
        ? null
        : rows.size() == 1
            ? usage(rows.get(0))
            : "It is written " + or(Lists.map(rows, row -> "`" + row.example() + "`"));
  }

  /** {@code It is written …}, long forms without what may be left out. */
  static String usage(StatementRow row) {
    String usage = row.usage();
    if (usage.endsWith(" AT") || usage.length() > LONGEST_USAGE) {
      usage = usage.replaceAll(" \\[[^\\]]*\\]", "").replaceAll(" AT$", " at COUNTS");
    }
    usage = usage.replace("TARGET", "PART");
    boolean bare = usage.equals(row.example()) || usage.equals(row.keyword());
    return "It is written " + (bare ? "" : usage + ", such as ") + "`" + row.example() + "`";
  }
}
