package tabor.parse;

import org.jspecify.annotations.Nullable;
import tabor.source.Span;

/** How deep the groups of a line are nested, counted before anything is parsed. */
final class Nesting {
  private Nesting() {}

  /** The first group that lies deeper than {@code most}; null if none does. */
  static @Nullable Span deeperThan(int most, String line) {
    if (line.indexOf('{') < 0) {
      return null;
    }
    int depth = 0;
    boolean lane = false;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (c == '#') {
        return null;
      }
      if (Lines.isQuote(c)) {
        i = Lines.endOfText(line, i, line.length()) - 1;
      } else if (c == ':') {
        lane = true;
      } else if (lane && c == '{') {
        if (++depth > most) {
          return new Span(i, i + 1);
        }
      } else if (c == '}') {
        depth = Math.max(0, depth - 1);
      } else if (c == ' ' || c == '\t' || c == '|') {
        depth = 0;
      }
    }
    return null;
  }
}
