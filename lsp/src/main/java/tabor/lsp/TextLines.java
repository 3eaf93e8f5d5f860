package tabor.lsp;

import java.util.Arrays;

/**
 * A text and where its lines start, never changed: an edit makes a new one. The line starts are
 * carried over, so that a keystroke in a long file looks at no more than the lines it touches.
 * Lines end with LF, CRLF or a lone CR.
 */
final class TextLines {
  private final String text;
  private final int[] starts;
  private final int count;

  private TextLines(String text, int[] starts, int count) {
    this.text = text;
    this.starts = starts;
    this.count = count;
  }

  /** Reads the line starts of a whole text. */
  static TextLines of(String text) {
    Starts found = new Starts(new int[16], 0);
    found.add(0);
    found.scan(text, 0, text.length());
    return new TextLines(text, found.array, found.count);
  }

  /** The text. */
  String text() {
    return text;
  }

  /** Length in UTF-16 units. */
  int length() {
    return text.length();
  }

  /** Number of lines, at least 1. */
  int lineCount() {
    return count;
  }

  /** Offset of the first character of a 0-based line. */
  int lineStart(int line) {
    return starts[line];
  }

  /** Offset after the last character of a 0-based line, its line end not counted. */
  int lineEnd(int line) {
    int end = line + 1 < count ? starts[line + 1] : text.length();
    if (end > starts[line] && line + 1 < count) {
      end--;
      if (text.charAt(end) == '\n' && end > starts[line] && text.charAt(end - 1) == '\r') {
        end--;
      }
    }
    return end;
  }

  /** The 0-based line of an offset between 0 and the text's length. */
  int lineOf(int offset) {
    int found = Arrays.binarySearch(starts, 0, count, offset);
    return found >= 0 ? found : -found - 2;
  }

  /** The text with the characters from {@code start} to before {@code end} replaced. */
  TextLines replace(int start, int end, String with) {
    int delta = with.length() - (end - start);
    StringBuilder built = new StringBuilder(text.length() + delta);
    built.append(text, 0, start).append(with).append(text, end, text.length());
    String changed = built.toString();
    // A CR before the edit, or an LF behind it, may come together or apart: one more unit each way.
    int first = lineOf(Math.max(0, start - 1));
    int last = lineOf(Math.min(text.length(), end + 1));
    int stop = last + 1 < count ? starts[last + 1] + delta : changed.length() + 1;
    Starts found = new Starts(Arrays.copyOf(starts, count + with.length() + 2), first + 1);
    found.scan(changed, starts[first], Math.min(stop - 1, changed.length()));
    for (int line = last + 1; line < count; line++) {
      found.add(starts[line] + delta);
    }
    return new TextLines(changed, found.array, found.count);
  }

  /** A growing list of line starts. */
  private static final class Starts {
    private int[] array;
    private int count;

    Starts(int[] array, int count) {
      this.array = array;
      this.count = count;
    }

    void add(int start) {
      if (count == array.length) {
        array = Arrays.copyOf(array, count * 2);
      }
      array[count++] = start;
    }

    /** Adds the starts that follow the line ends between two offsets. */
    void scan(String text, int from, int to) {
      int length = text.length();
      for (int i = from; i < to; i++) {
        char c = text.charAt(i);
        if (c == '\n' || (c == '\r' && (i + 1 == length || text.charAt(i + 1) != '\n'))) {
          add(i + 1);
        }
      }
    }
  }
}
