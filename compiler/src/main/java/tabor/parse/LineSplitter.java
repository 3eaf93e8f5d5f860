package tabor.parse;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.syntax.SectionKind;

/**
 * Walks the logical lines of a text: a line, or several where a text in triple quotes runs over
 * them. A triple text that is not closed before a complete section heading ends there.
 */
final class LineSplitter {
  private final String text;
  private int nextQuote;
  private int nextReturn;
  private int start;
  private int end;
  private int next;
  private @Nullable LineParser parser;

  LineSplitter(String text) {
    this.text = text;
    this.nextQuote = Delimiters.nextQuote(text, 0);
    this.nextReturn = find('\r', 0);
  }

  /** Moves to the next logical line; false at the end of the text. */
  boolean advance() {
    if (next >= text.length()) {
      return false;
    }
    start = next;
    end = lineEnd(start);
    if (nextQuote < end) {
      end = endWithTexts();
      nextQuote = Delimiters.nextQuote(text, end);
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

  private int find(char c, int from) {
    int found = text.indexOf(c, from);
    return found < 0 ? text.length() : found;
  }

  private int lineEnd(int from) {
    if (nextReturn < from) {
      nextReturn = find('\r', from);
    }
    int feed = find('\n', from);
    return Math.min(feed, nextReturn);
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
    int line = Delimiters.afterEnd(text, Delimiters.end(text, from));
    while (line < to) {
      int lineEnd = Delimiters.end(text, line);
      if (lineEnd < to || to == text.length()) {
        Optional<SectionKind> kind = Passages.heading(text, line, lineEnd);
        if (kind.isPresent() && isComplete(text.substring(line, lineEnd), kind.get())) {
          return line;
        }
      }
      line = Delimiters.afterEnd(text, lineEnd);
      if (lineEnd == text.length()) {
        break;
      }
    }
    return -1;
  }

  /** Prose may well begin with `player` or `sheet`: a title shows that a heading is meant. */
  private boolean isComplete(String line, SectionKind kind) {
    if ((kind == SectionKind.PLAYER || kind == SectionKind.SHEET)
        && LineEnds.nextQuote(line, 0) >= line.length()) {
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
