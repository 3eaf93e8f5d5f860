package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import tabor.source.Span;

/**
 * The words of a line as far as the cursor, read without a tree: the line is not finished yet.
 *
 * @param words the finished words
 * @param partial the word that the cursor stands in or right behind; empty after a space
 * @param span where the partial word stands in the line; empty at the cursor
 * @param inText true inside a quoted text
 * @param inComment true behind a {@code #}
 */
record Typed(List<String> words, String partial, Span span, boolean inText, boolean inComment) {
  /** Reads the part of a line before the cursor. */
  static Typed of(String line) {
    List<String> words = new ArrayList<>();
    int at = 0;
    while (at < line.length()) {
      char c = line.charAt(at);
      int start = at;
      if (Character.isWhitespace(c)) {
        at++;
        continue;
      } else if (c == '#') {
        return new Typed(words, "", new Span(line.length(), line.length()), false, true);
      } else if (c == '"') {
        int close = line.indexOf('"', at + 1);
        if (close < 0) {
          return new Typed(words, line.substring(at), new Span(at, line.length()), true, false);
        }
        at = close + 1;
      } else if (c == ',' || c == ':' || c == '=') {
        at++;
      } else {
        while (at < line.length() && !isBreak(line.charAt(at))) {
          at++;
        }
      }
      boolean sign = c == ',' || c == ':' || c == '=' || c == '"';
      if (at == line.length() && !sign) {
        return new Typed(words, line.substring(start), new Span(start, at), false, false);
      }
      words.add(line.substring(start, at));
    }
    return new Typed(words, "", new Span(line.length(), line.length()), false, false);
  }

  private static boolean isBreak(char c) {
    return Character.isWhitespace(c) || c == ',' || c == ':' || c == '=' || c == '"' || c == '#';
  }
}
