package tabor.parse;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.antlr.v4.runtime.CommonToken;
import org.antlr.v4.runtime.IntStream;
import org.antlr.v4.runtime.RuleContext;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.TokenSource;
import org.antlr.v4.runtime.TokenStream;
import org.antlr.v4.runtime.misc.Interval;
import tabor.grammar.LexerTable;
import tabor.grammar.TaborLexer;

/**
 * All tokens of one line, lexed at once by the table that the build makes of the lexer's grammar.
 * Positions are offsets in UTF-16 units: nothing outside {@link Spans} has to think of them.
 */
final class LineTokens implements TokenStream {
  /** Characters below this have a table of their own. */
  private static final int ASCII = 0x80;

  private static final char[] ASCII_COLUMNS = asciiColumns();

  private final List<Token> list = new ArrayList<>();
  private Token[] tokens = new Token[64];
  private int size;
  private int next;

  /** A token of a line, whose text is cut out only when it is asked for. */
  private static final class LineToken extends CommonToken {
    private static final long serialVersionUID = 1L;

    private final transient String whole;

    LineToken(int type, String line, int start, int end, int index) {
      super(type);
      this.whole = line;
      this.start = start;
      this.stop = end - 1;
      this.index = index;
    }

    @Override
    public String getText() {
      return type == EOF ? "<EOF>" : whole.substring(start, stop + 1);
    }
  }

  /** The tokens of a line, its end included, as a list of its own. */
  static List<Token> of(String line) {
    LineTokens tokens = new LineTokens();
    tokens.read(line, line.length());
    return new ArrayList<>(tokens.all());
  }

  /**
   * Reads a line in place of the one before.
   *
   * @param end where it ends, as an offset; what is behind is not read
   */
  void read(String line, int end) {
    size = 0;
    next = 0;
    list.clear();
    int mode = TaborLexer.DEFAULT_MODE;
    int at = 0;
    while (at < end) {
      int start = at;
      int state = LexerTable.STARTS.charAt(mode);
      int kind = 0;
      for (int i = start; i < end && state >= 0; i++) {
        state = LexerTable.next(state, column(line.charAt(i))) - 1;
        // The longest word wins.
        if (state >= 0 && LexerTable.LABELS.charAt(state) > 0) {
          kind = (LexerTable.LABELS.charAt(state) - 1) * 3;
          at = i + 1;
        }
      }
      if (LexerTable.KINDS.charAt(kind + 1) == 0) {
        add(LexerTable.KINDS.charAt(kind), line, start, at);
      }
      if (LexerTable.KINDS.charAt(kind + 2) > 0) {
        mode = LexerTable.KINDS.charAt(kind + 2) - 1;
      }
    }
    add(Token.EOF, line, end, end);
  }

  private void add(int type, String line, int start, int end) {
    if (size == tokens.length) {
      tokens = Arrays.copyOf(tokens, size * 2);
    }
    tokens[size] = new LineToken(type, line, start, end, size);
    size++;
  }

  private static int column(char c) {
    return c < ASCII ? ASCII_COLUMNS[c] : columnBeyond(c);
  }

  /** Ranges are few, and characters beyond ASCII are rare. */
  private static int columnBeyond(char c) {
    int at = LexerTable.RANGES.length() - 2;
    while (LexerTable.RANGES.charAt(at) > c) {
      at -= 2;
    }
    return LexerTable.RANGES.charAt(at + 1);
  }

  private static char[] asciiColumns() {
    char[] columns = new char[ASCII];
    for (char c = 0; c < ASCII; c++) {
      columns[c] = (char) columnBeyond(c);
    }
    return columns;
  }

  /** The tokens, the end included. */
  List<Token> all() {
    if (list.isEmpty()) {
      list.addAll(Arrays.asList(tokens).subList(0, size));
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

  /** Nothing makes tokens beside those of the line. */
  @Override
  public TokenSource getTokenSource() {
    throw new UnsupportedOperationException();
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
    return "line";
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
