package tabor.parse;

import java.util.List;
import org.antlr.v4.runtime.Token;
import tabor.syntax.SectionKind;

/** Why a line could not be read, in a teacher's words. */
final class SyntaxErrorExplainer {
  private final String line;
  private final SectionKind kind;
  private final boolean heading;
  private final List<Token> tokens;
  private final LineSimulation simulation;

  SyntaxErrorExplainer(String line, SectionKind kind, boolean heading, List<Token> tokens) {
    this.line = line;
    this.kind = kind;
    this.heading = heading;
    this.tokens = tokens;
    this.simulation = LineSimulation.over(tokens);
  }

  SyntaxProblem explain() {
    Token offending = tokens.get(Math.min(simulation.read(), tokens.size() - 1));
    return SyntaxProblem.of(
        offending.getType() == Token.EOF ? BrokenLine.span(tokens) : Spans.of(offending),
        "`" + offending.getText() + "` does not fit here",
        null);
  }
}
