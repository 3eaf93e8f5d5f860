package tabor.parse;

import org.antlr.v4.runtime.Token;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.parse.LineSimulation.Expectation;

/** What the grammar reads anywhere, but only lines that make variations may have. */
final class Choices {
  private Choices() {}

  /** True for {@code N of}, a bar sign between places, and a comma between patterns. */
  static boolean isOne(Expectation expectation) {
    int rule = expectation.rule();
    boolean places = rule == TaborParser.RULE_atPlaces || rule == TaborParser.RULE_addedPlaces;
    return places
        ? !expectation.types().contains(TaborLexer.AT)
        : rule == TaborParser.RULE_played && expectation.types().contains(TaborLexer.COMMA);
  }

  /** True if a line that starts with this token may have them. */
  static boolean mayStand(Token first) {
    return first.getType() == TaborLexer.EACH || first.getType() == TaborLexer.AND;
  }
}
