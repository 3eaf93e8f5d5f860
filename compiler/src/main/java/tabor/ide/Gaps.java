package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import tabor.ide.Leaf.Role;
import tabor.source.Span;

/**
 * The words and signs of a line that its tree does not keep. They can be told by their shape alone:
 * a run of letters is a keyword, digits are a number, a quote opens a text.
 */
final class Gaps {
  private Gaps() {}

  /**
   * The leaves of a line with what lies between them, and a comment behind them.
   *
   * @param leaves in order, counted from {@code start}
   * @param text the passage
   * @param start where the line starts in it
   * @param end where its statement ends in it
   */
  static List<Leaf> fill(List<Leaf> leaves, String text, int start, int end) {
    List<Leaf> all = new ArrayList<>();
    int at = start;
    for (Leaf leaf : leaves) {
      scan(text, start, at, Math.max(at, start + leaf.span().start()), all);
      all.add(leaf);
      at = Math.max(at, start + leaf.span().end());
    }
    scan(text, start, at, Math.max(at, end), all);
    scan(text, start, Math.max(at, end), lineEnd(text, Math.max(at, end)), all);
    return all;
  }

  /** The words and signs of a stretch without a tree, such as a broken line. */
  static List<Leaf> of(String text, int start, int end) {
    List<Leaf> all = new ArrayList<>();
    scan(text, start, start, end, all);
    return all;
  }

  private static int lineEnd(String text, int from) {
    int at = from;
    while (at < text.length() && text.charAt(at) != '\n' && text.charAt(at) != '\r') {
      at++;
    }
    return at;
  }

  private static void scan(String text, int start, int from, int to, List<Leaf> into) {
    int at = from;
    while (at < to) {
      char c = text.charAt(at);
      int end = at + 1;
      Role role;
      if (Character.isWhitespace(c) || c == '\uFEFF') {
        at = end;
        continue;
      } else if (c == '#') {
        end = Math.min(lineEnd(text, at), to);
        role = Role.COMMENT;
      } else if (c == '"') {
        end = Math.min(closing(text, at), to);
        role = Role.TEXT;
      } else if (isLetter(c)) {
        while (end < to && isWordPart(text.charAt(end))) {
          end++;
        }
        role = Role.KEYWORD;
      } else if (isDigit(c)) {
        while (end < to && (isDigit(text.charAt(end)) || text.charAt(end) == '.')) {
          end++;
        }
        role = Role.NUMBER;
      } else {
        role = Role.SIGN;
      }
      into.add(Leaf.of(role, text.substring(at, end), new Span(at - start, end - start)));
      at = end;
    }
  }

  private static int closing(String text, int quote) {
    boolean triple = text.startsWith("\"\"\"", quote);
    String mark = triple ? "\"\"\"" : "\"";
    int close = text.indexOf(mark, quote + mark.length());
    if (close < 0) {
      return lineEnd(text, quote);
    }
    return triple ? close + 3 : Math.min(close + 1, lineEnd(text, quote));
  }

  private static boolean isLetter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  private static boolean isWordPart(char c) {
    return isLetter(c) || isDigit(c) || c == '-' || c == '.';
  }
}
