package tabor.ide;

import tabor.source.Span;

/** Where the lines of a text start and end, by offsets. */
final class LineEnds {
  private LineEnds() {}

  /** The start of the line that holds an offset. */
  static int start(String text, int offset) {
    int at = offset;
    while (at > 0 && !isLineEnd(text.charAt(at - 1))) {
      at--;
    }
    return at;
  }

  /** The end of the line that holds an offset, its line end not counted. */
  static int end(String text, int offset) {
    int at = offset;
    while (at < text.length() && !isLineEnd(text.charAt(at))) {
      at++;
    }
    return at;
  }

  /** The lines that a span touches, the last one's line end included. */
  static Span whole(String text, Span span) {
    int end = end(text, span.end());
    if (end < text.length()) {
      end += text.startsWith("\r\n", end) ? 2 : 1;
    }
    return new Span(start(text, span.start()), end);
  }

  /** Where the blanks right before an offset start. */
  static int blanksBefore(String text, int offset) {
    int at = offset;
    while (at > 0 && (text.charAt(at - 1) == ' ' || text.charAt(at - 1) == '\t')) {
      at--;
    }
    return at;
  }

  /** What stands before an offset on its line. */
  static String before(String text, int offset) {
    return text.substring(start(text, offset), offset);
  }

  /** What a new line is to begin after: the line end that the text uses. */
  static String of(String text) {
    return text.contains("\r\n") ? "\r\n" : "\n";
  }

  static boolean isLineEnd(char c) {
    return c == '\n' || c == '\r';
  }
}
