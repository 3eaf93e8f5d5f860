package tabor.parse;

import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.TokenStream;
import org.antlr.v4.runtime.atn.ParserATNSimulator;
import org.jspecify.annotations.Nullable;
import tabor.grammar.DecisionTable;
import tabor.grammar.TaborParser;

/**
 * Chooses between a rule's alternatives by the table that the build makes of the grammar. What the
 * table does not hold is left to ANTLR's own prediction, which is set up only then: lines that no
 * alternative fits, and the few in which a word may be a name as well.
 */
class Prediction extends ParserATNSimulator {
  /** Null until it is needed. */
  private @Nullable ParserATNSimulator simulator;

  Prediction(TaborParser parser) {
    super(parser, null, null, null);
  }

  @Override
  public int adaptivePredict(TokenStream input, int decision, ParserRuleContext context) {
    int chosen = chosen(input, decision);
    if (chosen > 0) {
      return chosen;
    }
    if (simulator == null) {
      simulator = TaborParser.Network.prediction(new TaborParser(input));
    }
    return simulator.adaptivePredict(input, decision, context);
  }

  /** The alternative that the table has for what comes next, from 1; 0 if it has none. */
  static int chosen(TokenStream input, int decision) {
    int state = DecisionTable.STARTS.charAt(decision);
    for (int ahead = 1; state >= 0; ahead++) {
      state = DecisionTable.next(state, DecisionTable.TYPES.charAt(input.LA(ahead) + 1)) - 1;
      if (state >= 0 && DecisionTable.LABELS.charAt(state) > 0) {
        return DecisionTable.LABELS.charAt(state);
      }
    }
    return 0;
  }
}
