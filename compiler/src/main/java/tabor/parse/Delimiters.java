package tabor.parse;

/** Where lines, texts and comments end, found by hand since every character passes here. */
final class Delimiters {
  static final String QUOTES = "\"\u201C\u201D\u201E";

  private Delimiters() {}

  static boolean isQuote(char c) {
    return c == '"' || (c >= '\u201C' && QUOTES.indexOf(c) >= 0);
  }

  static boolean isTriple(String text, int at) {
    return at + 2 < text.length()
        && isQuote(text.charAt(at))
        && isQuote(text.charAt(at + 1))
        && isQuote(text.charAt(at + 2));
  }

  static boolean isEnd(char c) {
    return c == '\n' || c == '\r';
  }

  /** Offset of the line end at or after {@code from}; {@code limit} if there is none before. */
  static int end(String text, int from, int limit) {
    int at = from;
    while (at < limit && !isEnd(text.charAt(at))) {
      at++;
    }
    return at;
  }

  /** Offset of the line after the line end at {@code end}. */
  static int afterEnd(String text, int end) {
    if (end >= text.length()) {
      return end;
    }
    boolean both =
        text.charAt(end) == '\r' && end + 1 < text.length() && text.charAt(end + 1) == '\n';
    return end + (both ? 2 : 1);
  }

  /**
   * Offset after the text that starts with the quote at {@code at}: after its closing quotes, or at
   * {@code limit} if it has none; a text in simple quotes also ends at its line's end.
   */
  static int endOfText(String text, int at, int limit) {
    if (isTriple(text, at)) {
      for (int i = at + 3; i + 2 < limit; i++) {
        if (isTriple(text, i)) {
          return i + 3;
        }
      }
      return limit;
    }
    for (int i = at + 1; i < limit; i++) {
      char c = text.charAt(i);
      if (isQuote(c)) {
        return i + 1;
      }
      if (isEnd(c)) {
        return i;
      }
    }
    return limit;
  }

  /** Offset of the first character that is no blank; a line end is none. */
  static int skipBlanks(String text, int from, int limit) {
    int at = from;
    while (at < limit && Spans.isBlank(text.charAt(at))) {
      at++;
    }
    return at;
  }

  /** Offset after the last character before {@code limit} that is neither blank nor a line end. */
  static int endOfBlanks(String text, int limit) {
    int at = limit;
    while (at > 0 && (Spans.isBlank(text.charAt(at - 1)) || isEnd(text.charAt(at - 1)))) {
      at--;
    }
    return at;
  }
}
