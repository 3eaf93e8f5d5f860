package tabor.emit.grid;

import java.util.ArrayList;
import java.util.List;
import tabor.source.DisplayWidth;

/** Running text for a plain page: wrapped, and free of characters that would disturb a terminal. */
final class TextWrapper {
  private TextWrapper() {}

  /** Lines of at most {@code width} columns; an empty line in the text stays. */
  static List<String> wrap(String text, String indent, int width) {
    List<String> lines = new ArrayList<>();
    String plain = text.strip().replace("\r\n", "\n").replace('\r', '\n');
    if (plain.isEmpty()) {
      return lines;
    }
    for (String paragraph : plain.split("\n", -1)) {
      StringBuilder line = new StringBuilder(indent);
      boolean empty = true;
      for (String word : clean(paragraph).split(" ", -1)) {
        if (word.isEmpty()) {
          continue;
        }
        if (!empty && DisplayWidth.of(line.toString()) + 1 + DisplayWidth.of(word) > width) {
          lines.add(line.toString());
          line.setLength(0);
          line.append(indent);
          empty = true;
        }
        for (String part : broken(word, width - indent.length())) {
          if (!empty && line.length() + DisplayWidth.of(part) >= width) {
            lines.add(line.toString());
            line.setLength(0);
            line.append(indent);
            empty = true;
          }
          line.append(empty ? "" : " ").append(part);
          empty = false;
        }
      }
      lines.add(line.toString().stripTrailing());
    }
    return lines;
  }

  /** The same behind {@code lead}: further lines stand under the words of the first. */
  static List<String> wrap(String lead, String text, String indent, int width) {
    String under = indent + " ".repeat(DisplayWidth.of(lead));
    List<String> lines = wrap(text, under, width);
    lines.set(0, indent + lead + lines.get(0).substring(under.length()));
    return lines;
  }

  /** A word in pieces that fit a line: nearly always one. */
  private static List<String> broken(String word, int width) {
    if (DisplayWidth.of(word) <= width) {
      return List.of(word);
    }
    List<String> parts = new ArrayList<>();
    StringBuilder part = new StringBuilder();
    int used = 0;
    for (int point : word.codePoints().toArray()) {
      int wide = DisplayWidth.of(point);
      if (used + wide > width) {
        parts.add(part.toString());
        part.setLength(0);
        used = 0;
      }
      part.appendCodePoint(point);
      used += wide;
    }
    parts.add(part.toString());
    return parts;
  }

  /** One line: tabs become spaces; control characters and direction marks are left out. */
  static String clean(String text) {
    StringBuilder clean = new StringBuilder();
    for (int i = 0, point; i < text.length(); i += Character.charCount(point)) {
      point = text.codePointAt(i);
      boolean direction =
          point == 0x061C
              || (point >= 0x200B && point <= 0x200F)
              || (point >= 0x2028 && point <= 0x202E)
              || (point >= 0x2066 && point <= 0x2069)
              || point == 0xFEFF;
      if (point == '\t' || point == '\n') {
        clean.append(' ');
      } else if (!direction && !Character.isISOControl(point)) {
        boolean lone = point >= 0xD800 && point <= 0xDFFF;
        clean.appendCodePoint(lone ? 0xFFFD : point);
      }
    }
    return clean.toString();
  }
}
