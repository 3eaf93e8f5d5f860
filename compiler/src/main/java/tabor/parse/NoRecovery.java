package tabor.parse;

import java.io.Serial;
import org.antlr.v4.runtime.DefaultErrorStrategy;
import org.antlr.v4.runtime.Parser;
import org.antlr.v4.runtime.RecognitionException;
import org.antlr.v4.runtime.Token;

/**
 * Gives a line up at its first error, without a word: what is wrong with it is found by {@link
 * LineSimulation}, which knows more than the parser's own recovery.
 */
final class NoRecovery extends DefaultErrorStrategy {
  /** Thrown when a line is given up. */
  static final class Broken extends RuntimeException {
    @Serial private static final long serialVersionUID = 1L;

    Broken() {
      super(null, null, false, false);
    }
  }

  @Override
  public void recover(Parser recognizer, RecognitionException e) {
    throw new Broken();
  }

  @Override
  public Token recoverInline(Parser recognizer) {
    throw new Broken();
  }

  @Override
  public void reportError(Parser recognizer, RecognitionException e) {
    throw new Broken();
  }

  @Override
  public void sync(Parser recognizer) {}
}
