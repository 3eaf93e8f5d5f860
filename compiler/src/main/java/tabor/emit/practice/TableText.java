package tabor.emit.practice;

import java.util.ArrayList;
import java.util.List;
import tabor.source.DisplayWidth;

/** Text for tables on a terminal. */
final class TableText {
  private TableText() {}

  /** One line without control characters. */
  static String clean(String text) {
    StringBuilder out = new StringBuilder();
    text.codePoints()
        .forEach(
            point -> {
              int kind = Character.getType(point);
              boolean hidden = kind == Character.CONTROL || kind == Character.FORMAT;
              if (point == '\n' || point == '\t') {
                out.append(' ');
              } else if (!hidden) {
                out.appendCodePoint(point);
              }
            });
    return out.toString();
  }

  /** Running text in lines of at most so many columns. */
  static List<String> wrap(String text, int width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ", -1)) {
      if (line.length() > 0 && DisplayWidth.of(line + " " + word) > width) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.length() > 0 ? " " : "").append(word);
    }
    lines.add(line.toString());
    return lines;
  }

  /** Spaces up to a width on the screen, and the text. */
  static String right(String text, int width) {
    return " ".repeat(Math.max(0, width - DisplayWidth.of(text))) + text;
  }
}
