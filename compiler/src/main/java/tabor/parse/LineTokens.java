package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.IntStream;
import org.antlr.v4.runtime.Lexer;
import org.antlr.v4.runtime.RuleContext;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.TokenSource;
import org.antlr.v4.runtime.TokenStream;
import org.antlr.v4.runtime.misc.Interval;
import tabor.grammar.TaborLexer;

/**
 * All tokens of one line, lexed at once. ANTLR's own streams lex as they go and step over channels,
 * which a line needs neither of; parsers spend much of their time in here.
 */
final class LineTokens implements TokenStream {
  private final Lexer lexer;
  private final List<Token> list = new ArrayList<>();
  private Token[] tokens = new Token[64];
  private int size;
  private int next;

  LineTokens(Lexer lexer) {
    this.lexer = lexer;
  }

  /** The tokens of a line, its end included, as a list of its own. */
  static List<Token> of(String line) {
    TaborLexer lexer = new TaborLexer(new LineStream(line));
    lexer.removeErrorListeners();
    LineTokens tokens = new LineTokens(lexer);
    tokens.fill();
    return new ArrayList<>(tokens.all());
  }

  /** Reads the lexer to its end. */
  void fill() {
    size = 0;
    next = 0;
    list.clear();
    Token token;
    do {
      token = lexer.nextToken();
      if (token instanceof org.antlr.v4.runtime.WritableToken writable) {
        writable.setTokenIndex(size);
      }
      if (size == tokens.length) {
        tokens = java.util.Arrays.copyOf(tokens, size * 2);
      }
      tokens[size++] = token;
    } while (token.getType() != Token.EOF);
  }

  /** The tokens, the end included. */
  List<Token> all() {
    if (list.isEmpty()) {
      list.addAll(java.util.Arrays.asList(tokens).subList(0, size));
    }
    return list;
  }

  @Override
  public Token LT(int k) {
    int at = k > 0 ? next + k - 1 : next + k;
    return at < 0 ? null : tokens[Math.min(at, size - 1)];
  }

  @Override
  public int LA(int k) {
    int at = k > 0 ? next + k - 1 : next + k;
    return at < 0 ? Token.INVALID_TYPE : tokens[Math.min(at, size - 1)].getType();
  }

  @Override
  public void consume() {
    if (tokens[next].getType() == IntStream.EOF) {
      throw new IllegalStateException("cannot consume EOF");
    }
    next++;
  }

  @Override
  public Token get(int index) {
    return tokens[index];
  }

  @Override
  public TokenSource getTokenSource() {
    return lexer;
  }

  @Override
  public int mark() {
    return 0;
  }

  @Override
  public void release(int marker) {}

  @Override
  public int index() {
    return next;
  }

  @Override
  public void seek(int index) {
    next = Math.min(index, size - 1);
  }

  @Override
  public int size() {
    return size;
  }

  @Override
  public String getSourceName() {
    return lexer.getSourceName();
  }

  @Override
  public String getText(Interval interval) {
    StringBuilder text = new StringBuilder();
    for (int i = interval.a; i <= interval.b && i < size; i++) {
      if (tokens[i].getType() != Token.EOF) {
        text.append(tokens[i].getText());
      }
    }
    return text.toString();
  }

  @Override
  public String getText() {
    return getText(Interval.of(0, size - 1));
  }

  @Override
  public String getText(RuleContext context) {
    return getText(context.getSourceInterval());
  }

  @Override
  public String getText(Token start, Token stop) {
    return getText(Interval.of(start.getTokenIndex(), stop.getTokenIndex()));
  }
}
