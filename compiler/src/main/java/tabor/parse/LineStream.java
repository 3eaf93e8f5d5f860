package tabor.parse;

import org.antlr.v4.runtime.CharStream;
import org.antlr.v4.runtime.IntStream;
import org.antlr.v4.runtime.misc.Interval;

/**
 * A line as the generated lexer reads it, in UTF-16 units. ANTLR's own streams count code points;
 * read this way an index is an offset, and nothing outside {@link Spans} has to think of it.
 */
final class LineStream implements CharStream {
  private final String text;
  private int index;

  LineStream(String text) {
    this.text = text;
  }

  @Override
  public String getText(Interval interval) {
    int end = Math.min(interval.b + 1, text.length());
    return interval.a >= end ? "" : text.substring(interval.a, end);
  }

  @Override
  public void consume() {
    if (index == text.length()) {
      throw new IllegalStateException("cannot consume EOF");
    }
    index++;
  }

  @Override
  public int LA(int i) {
    int at = i > 0 ? index + i - 1 : index + i;
    return i == 0 || at < 0 || at >= text.length() ? IntStream.EOF : text.charAt(at);
  }

  @Override
  public int mark() {
    return -1;
  }

  @Override
  public void release(int marker) {}

  @Override
  public int index() {
    return index;
  }

  @Override
  public void seek(int to) {
    index = Math.min(to, text.length());
  }

  @Override
  public int size() {
    return text.length();
  }

  @Override
  public String getSourceName() {
    return "line";
  }
}
