package tabor.parse;

import org.antlr.v4.runtime.DefaultErrorStrategy;
import org.antlr.v4.runtime.Parser;
import org.antlr.v4.runtime.RecognitionException;
import org.antlr.v4.runtime.Token;

/**
 * Gives a line up at its first error, without a word. Most lines have none; one that has is parsed
 * again with {@link CappedRecovery}, which looks for a way on and so has more to say, but takes its
 * time at every token.
 */
final class NoRecovery extends DefaultErrorStrategy {
  @Override
  public void recover(Parser recognizer, RecognitionException e) {
    throw new CappedRecovery.Enough();
  }

  @Override
  public Token recoverInline(Parser recognizer) {
    throw new CappedRecovery.Enough();
  }

  @Override
  public void reportError(Parser recognizer, RecognitionException e) {
    throw new CappedRecovery.Enough();
  }

  @Override
  public void sync(Parser recognizer) {}
}
