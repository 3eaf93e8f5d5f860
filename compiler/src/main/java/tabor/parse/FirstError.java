package tabor.parse;

import org.antlr.v4.runtime.BaseErrorListener;
import org.antlr.v4.runtime.Parser;
import org.antlr.v4.runtime.RecognitionException;
import org.antlr.v4.runtime.Recognizer;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.misc.IntervalSet;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborParser;

/** The first thing that the generated parser finds wrong with a line; the rest follows from it. */
final class FirstError extends BaseErrorListener {
  private @Nullable Token offending;
  private @Nullable IntervalSet expected;
  private int rule = -1;

  void clear() {
    offending = null;
    expected = null;
    rule = -1;
  }

  boolean found() {
    return offending != null;
  }

  /** Where the parser could go no further. */
  Token offending() {
    if (offending == null) {
      throw new IllegalStateException("no error");
    }
    return offending;
  }

  /** The token types that could have stood there; null where several ways were open. */
  @Nullable IntervalSet expected() {
    return expected;
  }

  /** The rule that was being read, as an index into {@link TaborParser#ruleNames}. */
  int rule() {
    return rule;
  }

  @Override
  public void syntaxError(
      Recognizer<?, ?> recognizer,
      @Nullable Object symbol,
      int line,
      int column,
      String message,
      @Nullable RecognitionException cause) {
    if (offending == null && symbol instanceof Token token && recognizer instanceof Parser parser) {
      offending = token;
      rule = parser.getContext().getRuleIndex();
      expected =
          cause instanceof org.antlr.v4.runtime.NoViableAltException
              ? null
              : parser.getExpectedTokens();
    }
  }
}
