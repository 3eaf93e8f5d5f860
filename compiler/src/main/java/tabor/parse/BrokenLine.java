package tabor.parse;

import org.jspecify.annotations.Nullable;
import tabor.source.Span;
import tabor.syntax.Heading;
import tabor.syntax.Statement;
import tabor.syntax.Word;

/** What can be told of a line that could not be read. */
final class BrokenLine {
  private BrokenLine() {}

  /** From the first character that says something to the last. */
  static Span span(String line) {
    int start = Lines.skipBlanks(line, 0, line.length());
    int end = Lines.endOfBlanks(line, Lines.comment(line));
    return new Span(start, Math.max(start, end));
  }

  /** A broken line that is no heading. */
  static Statement.Broken other(String line) {
    Span span = span(line);
    String said = span.in(line);
    return new Statement.Broken(isLane(said), span);
  }

  private static boolean isLane(String said) {
    for (int i = 0; i < said.length(); i++) {
      char c = said.charAt(i);
      if (c == ':') {
        return true;
      }
      if (Lines.isQuote(c)) {
        break;
      }
    }
    String[] words = said.split("[ \\t]+", 6);
    for (int i = 1; i < words.length && i < 3; i++) {
      if (words[i].equals("play") || words[i].equals("plays")) {
        return isPlayed(said, words[i]);
      }
    }
    return false;
  }

  /** True unless what follows {@code in} are bars: then it is an edit that cannot be read. */
  private static boolean isPlayed(String said, String verb) {
    int in = said.indexOf(" in ");
    if (in < 0) {
      return verb.equals("play");
    }
    String after = said.substring(in + 4).strip();
    return !after.startsWith("bar") && !after.startsWith("last") && !after.startsWith("every");
  }

  /** A broken heading. */
  static Heading.Faulty heading(String line) {
    Span span = span(line);
    String keyword = firstWord(line.substring(span.start()));
    int after = span.start() + keyword.length();
    return new Heading.Faulty(
        new Word(keyword, new Span(span.start(), after)), name(line, after, span.end()), span);
  }

  private static @Nullable Word name(String line, int from, int end) {
    int start = Lines.skipBlanks(line, from, end);
    if (start == end || !isSmall(line.charAt(start))) {
      return null;
    }
    String name = firstWord(line.substring(start, end));
    return name.equals("from") ? null : new Word(name, new Span(start, start + name.length()));
  }

  private static boolean isSmall(char c) {
    return c >= 'a' && c <= 'z';
  }

  /** The letters, digits and hyphens that a text starts with. */
  static String firstWord(String text) {
    int at = 0;
    while (at < text.length()
        && (isSmall(text.charAt(at))
            || (text.charAt(at) >= '0' && text.charAt(at) <= '9')
            || (text.charAt(at) == '-' && at + 1 < text.length() && text.charAt(at + 1) != '-'))) {
      at++;
    }
    return text.substring(0, at);
  }
}
