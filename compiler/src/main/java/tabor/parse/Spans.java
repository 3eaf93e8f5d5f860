package tabor.parse;

import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import tabor.grammar.TaborLexer;
import tabor.source.Span;

/**
 * From ANTLR's places to ours. Its stop index is that of the last character, ours that after it; an
 * end-of-file token stops before it starts. {@link LineTokens} has seen to it that both count
 * UTF-16 units.
 */
final class Spans {
  private Spans() {}

  /** The range of a token, blanks round a bar line or after a colon left out. */
  static Span of(Token token) {
    int start = token.getStartIndex();
    int end = Math.max(start, token.getStopIndex() + 1);
    if (token.getType() == TaborLexer.BAR_LINE || token.getType() == TaborLexer.LANE_START) {
      String text = token.getText();
      String sign = text.strip();
      start += text.indexOf(sign);
      end = start + sign.length();
    }
    return new Span(start, end);
  }

  /** The range of everything that a rule has read. */
  static Span of(ParserRuleContext rule) {
    return between(rule.start, rule.stop == null ? rule.start : rule.stop);
  }

  /** From the first character of one token to the last of another. */
  static Span between(Token first, Token last) {
    int start = first.getStartIndex();
    int end = last.getType() == TaborLexer.BAR_LINE ? of(last).end() : last.getStopIndex() + 1;
    return new Span(start, Math.max(start, end));
  }

  /** What stands between two tokens. */
  static Span gap(Token before, Token after) {
    int start = of(before).end();
    return new Span(start, after.getStartIndex());
  }

  /** A space, a tab or a byte-order mark. */
  static boolean isBlank(char c) {
    return c == ' ' || c == '\t' || c == '\uFEFF';
  }
}
