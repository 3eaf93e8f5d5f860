package tabor.parse;

import java.io.Serial;
import org.antlr.v4.runtime.DefaultErrorStrategy;
import org.antlr.v4.runtime.Parser;
import org.antlr.v4.runtime.RecognitionException;
import org.antlr.v4.runtime.Token;

/**
 * ANTLR's recovery, a few times a line: enough for the parser to end in good order, too little for
 * a line of rubbish to cost more than its length.
 */
final class CappedRecovery extends DefaultErrorStrategy {
  private static final int MOST = 3;

  private int used;

  /** Thrown when a line is given up. */
  static final class Enough extends RuntimeException {
    @Serial private static final long serialVersionUID = 1L;

    Enough() {
      super(null, null, false, false);
    }
  }

  @Override
  public void reset(Parser recognizer) {
    super.reset(recognizer);
    used = 0;
  }

  @Override
  public void recover(Parser recognizer, RecognitionException e) {
    use();
    super.recover(recognizer, e);
  }

  @Override
  public Token recoverInline(Parser recognizer) {
    use();
    return super.recoverInline(recognizer);
  }

  @Override
  protected Token singleTokenDeletion(Parser recognizer) {
    Token token = super.singleTokenDeletion(recognizer);
    if (token != null) {
      use();
    }
    return token;
  }

  private void use() {
    if (++used > MOST) {
      throw new Enough();
    }
  }
}
