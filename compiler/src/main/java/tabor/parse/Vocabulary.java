package tabor.parse;

import org.antlr.v4.runtime.misc.IntervalSet;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;

/** The words of the notation by what they are used for, read off the grammar itself. */
public final class Vocabulary {
  private static final IntervalSet NAMES = first(TaborParser.RULE_name);

  private Vocabulary() {}

  private static IntervalSet first(int rule) {
    return TaborParser._ATN.nextTokens(TaborParser._ATN.ruleToStartState[rule]);
  }

  /** True if a token of this type may name a section. */
  static boolean isName(int type) {
    return NAMES.contains(type);
  }

  /** True for names and for the words of the language. */
  static boolean isWord(int type) {
    return NAMES.contains(type) || type == TaborLexer.ZONED;
  }
}
