package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.Token;
import tabor.grammar.TaborLexer;
import tabor.source.Span;

/**
 * The words of a line as the lexer sees them: all there is to say of a line that cannot be read.
 */
public final class LineWords {
  private LineWords() {}

  /** What a word is by itself. */
  public enum Kind {
    /** A word of the language. */
    KEYWORD,
    /** A name, also one that is spelled as no name is. */
    NAME,
    NUMBER,
    COUNT,
    TEXT,
    /** A letter among beats. */
    STROKE,
    SIGN
  }

  /**
   * A word.
   *
   * @param kind what it is
   * @param span where in the line
   */
  public record Word(Kind kind, Span span) {}

  /** The words of a line in order, comments and blanks left out. */
  public static List<Word> of(String line) {
    List<Word> words = new ArrayList<>();
    for (Token token : LineTokens.of(line)) {
      String text = token.getText();
      if (token.getType() != Token.EOF && !text.isBlank()) {
        int start = token.getStartIndex() + text.length() - text.stripLeading().length();
        words.add(new Word(kind(token.getType()), new Span(start, start + text.strip().length())));
      }
    }
    return words;
  }

  /** True if what follows the end of the text would be read among beats. */
  public static boolean endsInBeats(String line) {
    boolean beats = false;
    int end = 0;
    for (Token token : LineTokens.of(line)) {
      beats |= token.getType() == TaborLexer.LANE_START;
      end = Math.max(end, token.getStopIndex() + 1);
    }
    return beats && line.indexOf('#', end) < 0;
  }

  private static Kind kind(int type) {
    return switch (type) {
      case TaborLexer.NAME, TaborLexer.ZONED, TaborLexer.MISSPELT -> Kind.NAME;
      case TaborLexer.WHOLE,
          TaborLexer.DECIMAL,
          TaborLexer.RATIO,
          TaborLexer.SUM,
          TaborLexer.PERCENT,
          TaborLexer.ORDINAL ->
          Kind.NUMBER;
      case TaborLexer.COUNT, TaborLexer.SAID, TaborLexer.SLOT, TaborLexer.AMPERSAND -> Kind.COUNT;
      case TaborLexer.QUOTED,
          TaborLexer.TRIPLE_QUOTED,
          TaborLexer.OPEN_QUOTED,
          TaborLexer.OPEN_TRIPLE ->
          Kind.TEXT;
      case TaborLexer.STROKE -> Kind.STROKE;
      default -> {
        String word = Vocabulary.literal(type);
        yield word != null && Character.isLetter(word.charAt(0)) ? Kind.KEYWORD : Kind.SIGN;
      }
    };
  }
}
