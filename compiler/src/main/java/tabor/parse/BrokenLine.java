package tabor.parse;

import java.util.List;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborLexer;
import tabor.source.Span;
import tabor.syntax.Heading;
import tabor.syntax.Name;
import tabor.syntax.SectionKind;
import tabor.syntax.Statement;

/** What can be told of a line that could not be read. */
final class BrokenLine {
  private BrokenLine() {}

  /** From the first token to the last that says something, blanks at its end left out. */
  static Span span(List<Token> tokens) {
    int start = tokens.get(0).getStartIndex();
    for (int i = tokens.size() - 2; i >= 0; i--) {
      String text = tokens.get(i).getText();
      int said = Delimiters.endOfBlanks(text, text.length());
      if (said > 0) {
        return new Span(start, tokens.get(i).getStartIndex() + said);
      }
    }
    return new Span(start, start);
  }

  /** The place of a token; of a run of odd characters only the first, whole if it takes two. */
  static Span character(List<Token> tokens, int at) {
    Span span = Spans.of(tokens.get(at));
    if (tokens.get(at).getType() != TaborLexer.STRANGE) {
      return span;
    }
    int units = text(tokens, at).length();
    return new Span(span.start(), span.start() + units);
  }

  /** The first character of a token; two units where it is outside the basic plane. */
  static String text(List<Token> tokens, int at) {
    String text = tokens.get(at).getText();
    boolean half = text.length() == 1 && Character.isHighSurrogate(text.charAt(0));
    if (half && at + 1 < tokens.size()) {
      text += tokens.get(at + 1).getText();
    }
    return text.isEmpty() ? text : text.substring(0, text.offsetByCodePoints(0, 1));
  }

  /** A broken line that is no heading. */
  static Statement.Broken other(List<Token> tokens) {
    Token first = tokens.get(0);
    String keyword = Vocabulary.isWord(first.getType()) ? first.getText() : "";
    return new Statement.Broken(keyword, isLane(tokens), span(tokens));
  }

  private static boolean isLane(List<Token> tokens) {
    boolean play = false;
    boolean plays = false;
    for (int i = 0; i < tokens.size(); i++) {
      switch (tokens.get(i).getType()) {
        case TaborLexer.LANE_START -> {
          return true;
        }
        case TaborLexer.PLAY -> play |= i == 1 || i == 2;
        case TaborLexer.PLAYS -> plays |= i == 1 || i == 2;
        case TaborLexer.IN -> {
          // Unless what follows are bars: then it is an edit that cannot be read.
          if (play || plays) {
            return switch (tokens.get(i + 1).getType()) {
              case TaborLexer.BAR, TaborLexer.BARS, TaborLexer.LAST, TaborLexer.EVERY -> false;
              default -> true;
            };
          }
        }
        default -> {}
      }
    }
    return play;
  }

  /** A broken heading; its name is what stands in the place of one, spelled as a name. */
  static Heading.Faulty heading(String line, SectionKind kind, List<Token> tokens) {
    int end = HeadingMistakes.endOfName(kind, tokens);
    if (end == 1) {
      return heading(kind, null, span(tokens));
    }
    Span span = Spans.between(tokens.get(1), tokens.get(end - 1));
    String name = HeadingMistakes.name(span.in(line));
    return heading(kind, name.isEmpty() ? null : new Name(name, span), span(tokens));
  }

  static Heading.Faulty heading(SectionKind kind, @Nullable Name name, Span span) {
    return new Heading.Faulty(kind, name, span);
  }
}
