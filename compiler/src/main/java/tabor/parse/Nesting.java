package tabor.parse;

import java.util.List;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborLexer;

/** How deep the groups of a line are nested, counted before anything is parsed. */
final class Nesting {
  private Nesting() {}

  /** The first brace that lies deeper than {@code most}; null if none does. */
  static @Nullable Token deeperThan(int most, List<Token> tokens) {
    int depth = 0;
    for (Token token : tokens) {
      switch (token.getType()) {
        case TaborLexer.GROUP_OPEN -> {
          if (++depth > most) {
            return token;
          }
        }
        case TaborLexer.GROUP_CLOSE -> depth = Math.max(0, depth - 1);
        case TaborLexer.GAP, TaborLexer.BAR_LINE -> depth = 0;
        default -> {}
      }
    }
    return null;
  }
}
