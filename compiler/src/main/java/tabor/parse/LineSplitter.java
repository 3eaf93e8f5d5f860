package tabor.parse;

import java.util.Arrays;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.syntax.SectionKind;

/**
 * Walks the logical lines of a text: a line, or several where a text in triple quotes runs over
 * them. A triple text that is not closed before a complete section heading ends there.
 */
final class LineSplitter {
  private final String text;
  private final Finder quotes;
  private final Finder feeds;
  private final Finder returns;
  private int start;
  private int end;
  private int next;
  private @Nullable LineParser parser;

  LineSplitter(String text) {
    this.text = text;
    this.quotes = new Finder(text, Delimiters.QUOTES);
    this.feeds = new Finder(text, "\n");
    this.returns = new Finder(text, "\r");
  }

  /** Moves to the next logical line; false at the end of the text. */
  boolean advance() {
    if (next >= text.length()) {
      return false;
    }
    start = next;
    end = lineEnd(start);
    if (quotes.next(start) < end) {
      end = endWithTexts();
    }
    next = Delimiters.afterEnd(text, end);
    return true;
  }

  /** Offset of the line's first character. */
  int start() {
    return start;
  }

  /** Offset after its last, the line end not counted. */
  int end() {
    return end;
  }

  /** Offset of the line after it. */
  int next() {
    return next;
  }

  /**
   * Finds the next of some characters, looking at each character of the text once however often it
   * is asked; it is asked from left to right.
   */
  private static final class Finder {
    private final String text;
    private final String wanted;
    private final int[] found;

    Finder(String text, String wanted) {
      this.text = text;
      this.wanted = wanted;
      this.found = new int[wanted.length()];
      Arrays.fill(found, -1);
    }

    /** Offset of the next one at or after {@code from}; the text's length if there is none. */
    int next(int from) {
      int nearest = text.length();
      for (int i = 0; i < found.length; i++) {
        if (found[i] < from) {
          int at = text.indexOf(wanted.charAt(i), from);
          found[i] = at < 0 ? text.length() : at;
        }
        nearest = Math.min(nearest, found[i]);
      }
      return nearest;
    }
  }

  private int lineEnd(int from) {
    return Math.min(feeds.next(from), returns.next(from));
  }

  private int endWithTexts() {
    int at = start;
    while (at < text.length()) {
      char c = text.charAt(at);
      if (Delimiters.isEnd(c)) {
        return at;
      }
      if (c == '#') {
        return lineEnd(at);
      }
      if (!Delimiters.isQuote(c)) {
        at++;
      } else if (Delimiters.isTriple(text, at)) {
        int closed = Delimiters.endOfText(text, at, text.length());
        int heading = headingWithin(at + 3, closed);
        if (heading >= 0) {
          return beforeLine(heading);
        }
        at = closed;
      } else {
        at = Delimiters.endOfText(text, at, text.length());
      }
    }
    return at;
  }

  /** Offset of a complete section heading that lies between two offsets; -1 if there is none. */
  private int headingWithin(int from, int to) {
    int lineEnd = Delimiters.end(text, from, to);
    while (lineEnd < to) {
      int line = Delimiters.afterEnd(text, lineEnd);
      lineEnd = Delimiters.end(text, line, to);
      if (lineEnd < to || to == text.length()) {
        Optional<SectionKind> kind = Passages.heading(text, line, lineEnd);
        if (kind.isPresent() && isComplete(text.substring(line, lineEnd), kind.get())) {
          return line;
        }
      }
    }
    return -1;
  }

  /** Prose may well begin with `player` or `sheet`: a title shows that a heading is meant. */
  private boolean isComplete(String line, SectionKind kind) {
    if ((kind == SectionKind.PLAYER || kind == SectionKind.SHEET)
        && line.chars().noneMatch(c -> Delimiters.isQuote((char) c))) {
      return false;
    }
    if (line.length() > Reader.MOST_IN_A_LINE) {
      return false;
    }
    if (parser == null) {
      parser = new LineParser();
    }
    return parser.isStatement(line);
  }

  /** Offset of the end of the line before the one that starts at {@code line}. */
  private int beforeLine(int line) {
    int at = line - 1;
    return at > 0 && text.charAt(at) == '\n' && text.charAt(at - 1) == '\r' ? at - 1 : at;
  }
}
