package tabor.emit.practice;

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

  /** The text and spaces up to a width on the screen. */
  static String left(String text, int width) {
    return text + " ".repeat(Math.max(0, width - DisplayWidth.of(text)));
  }

  /** Spaces up to a width on the screen, and the text. */
  static String right(String text, int width) {
    return " ".repeat(Math.max(0, width - DisplayWidth.of(text))) + text;
  }
}
