package tabor.source;

import java.util.Arrays;

/** Where the lines of a text start; lines end with LF, CRLF or a lone CR. */
public final class LineIndex {
  private final String text;
  private final int[] starts;
  private final int lines;

  /** Reads the line starts of {@code text} once. */
  public LineIndex(String text) {
    this.text = text;
    int[] found = new int[16];
    int count = 1;
    int length = text.length();
    for (int i = 0; i < length; i++) {
      char c = text.charAt(i);
      if (c == '\n' || (c == '\r' && (i + 1 == length || text.charAt(i + 1) != '\n'))) {
        if (count == found.length) {
          found = Arrays.copyOf(found, count * 2);
        }
        found[count++] = i + 1;
      }
    }
    this.starts = found;
    this.lines = count;
  }

  /** Number of lines, at least 1: a text that ends with a line end has an empty last line. */
  public int lineCount() {
    return lines;
  }

  /** The 0-based line of an offset between 0 and the text's length. */
  public int lineOf(int offset) {
    int found = Arrays.binarySearch(starts, 0, lines, offset);
    return found >= 0 ? found : -found - 2;
  }

  /** Offset of the first character of a 0-based line. */
  public int lineStart(int line) {
    return starts[line];
  }

  /** Offset after the last character of a 0-based line, its line end not counted. */
  public int lineEnd(int line) {
    int end = line + 1 < lines ? starts[line + 1] : text.length();
    while (end > starts[line] && (text.charAt(end - 1) == '\n' || text.charAt(end - 1) == '\r')) {
      end--;
    }
    return end;
  }

  /** Distance of an offset from the start of its line, in UTF-16 units. */
  public int columnOf(int offset) {
    return offset - starts[lineOf(offset)];
  }
}
