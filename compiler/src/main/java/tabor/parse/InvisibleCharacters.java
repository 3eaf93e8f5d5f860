package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborLexer;
import tabor.lists.Lists;
import tabor.parse.SyntaxProblem.Replaced;
import tabor.source.Span;

/** Characters that nobody sees and that come along with pasted text. */
final class InvisibleCharacters {
  private InvisibleCharacters() {}

  /** The problem, if the first token that cannot be read holds such a character; else null. */
  static @Nullable SyntaxProblem explain(String line, List<Token> tokens, int at) {
    Token offending = tokens.get(at);
    if (offending.getType() != TaborLexer.STRANGE) {
      return null;
    }
    Span span = Spans.of(offending);
    for (int i = span.start(); i < span.end(); i++) {
      String name = name(line.charAt(i));
      if (name != null) {
        return SyntaxProblem.of(
                new Span(i, i + 1),
                "here stands " + name,
                isSpace(line.charAt(i)) ? "Write a plain space" : "Take it out")
            .fix(title(line, tokens), replacements(line, tokens));
      }
    }
    return null;
  }

  /** All of the line at once, since they come in numbers; what stands in texts may stay. */
  private static List<Replaced> replacements(String line, List<Token> tokens) {
    List<Replaced> edits = new ArrayList<>();
    for (Token token : tokens) {
      if (token.getType() == TaborLexer.STRANGE) {
        Span span = Spans.of(token);
        for (int i = span.start(); i < span.end(); i++) {
          if (name(line.charAt(i)) != null) {
            edits.add(new Replaced(new Span(i, i + 1), isSpace(line.charAt(i)) ? " " : ""));
          }
        }
      }
    }
    return edits;
  }

  private static String title(String line, List<Token> tokens) {
    List<Replaced> edits = replacements(line, tokens);
    boolean spaces = Lists.any(edits, e -> !e.text().isEmpty());
    if (spaces) {
      return edits.size() == 1 ? "Write a plain space" : "Write plain spaces";
    }
    return edits.size() == 1 ? "Take it out" : "Take them out";
  }

  private static boolean isSpace(char c) {
    return Character.getType(c) == Character.SPACE_SEPARATOR
        || c == '\u2028'
        || c == '\u2029'
        || c == '\f'
        || c == '\u000B'
        || c == '\u0085';
  }

  /** What the character is called; null for one that can be seen. */
  private static @Nullable String name(char c) {
    return switch (c) {
      case '\u00A0' -> "a no-break space, often pasted from e-mail";
      case '\u202F' -> "a narrow no-break space, often pasted from a web page";
      case '\u200B' -> "a zero-width space, often pasted from a web page";
      case '\u200C', '\u200D' -> "a zero-width joiner, often pasted from a chat";
      case '\u2060' -> "a word joiner, often pasted from a web page";
      case '\u00AD' -> "a soft hyphen, often pasted from a document";
      case '\u200E', '\u200F' -> "a direction mark, often pasted from a document";
      case '\u3000' -> "a full-width space";
      default ->
          isSpace(c)
              ? "an unusual space, often pasted from a document"
              : Character.isISOControl(c) || Character.getType(c) == Character.FORMAT
                  ? "an invisible character"
                  : null;
    };
  }
}
