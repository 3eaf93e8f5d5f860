package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.misc.IntervalSet;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;

/** What could have stood at a place, in our own names for things, never those of the grammar. */
final class Expected {
  private static final int MOST = 4;
  private static final Set<Integer> COUNTS =
      Set.of(TaborLexer.WHOLE, TaborLexer.DECIMAL, TaborLexer.RATIO, TaborLexer.COUNT);

  private Expected() {}

  /** {@code a}, {@code a or b}, {@code a, b or c}. */
  static String or(List<String> items) {
    int last = items.size() - 1;
    return last <= 0
        ? String.join("", items)
        : String.join(", ", items.subList(0, last)) + " or " + items.get(last);
  }

  /** What could have stood there; null if it cannot be said in a few words. */
  static @Nullable String words(int rule, @Nullable IntervalSet expected) {
    String ofRule = ofRule(rule);
    if (ofRule != null) {
      return ofRule;
    }
    if (expected == null || expected.isNil()) {
      return null;
    }
    Set<Integer> types = new TreeSet<>(expected.toSet());
    List<String> words = new ArrayList<>();
    if (types.contains(TaborLexer.NAME) && types.contains(TaborLexer.WITHOUT)) {
      types.removeIf(type -> type >= TaborLexer.ACCENT && type <= TaborLexer.NAME);
      words.add("a name");
    }
    if (types.remove(TaborLexer.ZONED)) {
      types.remove(TaborLexer.NAME);
      if (types.remove(TaborLexer.RIGHT)) {
        types.remove(TaborLexer.LEFT);
        words.add("a limb");
      }
      words.add("a surface such as snare");
    }
    if (types.containsAll(COUNTS)) {
      types.removeAll(COUNTS);
      words.add("a count such as 2&");
    } else if (types.remove(TaborLexer.DECIMAL)) {
      types.remove(TaborLexer.WHOLE);
      words.add("a number");
    }
    if (types.remove(TaborLexer.QUOTED)) {
      types.remove(TaborLexer.TRIPLE_QUOTED);
      words.add("a text in quotes");
    }
    boolean mayEnd = types.remove(Token.EOF);
    for (int type : types) {
      words.add(ofType(type));
    }
    if (mayEnd) {
      words.add("the end of the line");
    }
    return words.isEmpty() || words.size() > MOST ? null : or(words);
  }

  private static @Nullable String ofRule(int rule) {
    return switch (rule) {
      case TaborParser.RULE_name -> "a name";
      case TaborParser.RULE_surface -> "a surface such as snare";
      case TaborParser.RULE_limb -> "a limb: right, left, right foot or left foot";
      case TaborParser.RULE_targets, TaborParser.RULE_target ->
          "a limb, hands, feet, all or a surface such as snare";
      case TaborParser.RULE_count, TaborParser.RULE_placeItem -> "a count such as 2&";
      case TaborParser.RULE_text -> "a text in quotes";
      case TaborParser.RULE_number -> "a number";
      case TaborParser.RULE_level -> "ghosted, plain or accented";
      case TaborParser.RULE_tempo -> "a tempo such as 92";
      case TaborParser.RULE_levelItem -> "a level with its number, such as ghost 35";
      case TaborParser.RULE_limitItem -> "a limit such as hands 6 to 9";
      default -> null;
    };
  }

  private static String ofType(int type) {
    return switch (type) {
      case TaborLexer.NAME -> "a word";
      case TaborLexer.WHOLE -> "a number";
      case TaborLexer.RATIO -> "a meter such as 4/4";
      case TaborLexer.SUM -> "a sum such as 2+2+3";
      case TaborLexer.PERCENT -> "a share such as 62%";
      case TaborLexer.ORDINAL -> "a number such as 4th";
      case TaborLexer.AMPERSAND -> "&";
      case TaborLexer.COMMA -> "a comma";
      case TaborLexer.EQUALS -> "an equals sign";
      case TaborLexer.LANE_START -> "a colon";
      default -> {
        String literal = TaborLexer.VOCABULARY.getLiteralName(type);
        yield literal == null ? "something else" : literal.replace("'", "`");
      }
    };
  }
}
